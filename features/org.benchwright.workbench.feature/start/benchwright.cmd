@echo off
rem Opens the Benchwright window. Needs a Java 17 or later on the path or in JAVA_HOME.
setlocal
set "java=javaw"
if defined JAVA_HOME set "java=%JAVA_HOME%\bin\javaw"
rem The demo procedures lie beside this script in an archive.
set demo=
if exist "%~dp0procedures\" set demo="-Dbenchwright.procedures=%~dp0procedures"
for %%L in ("%~dp0plugins\org.eclipse.equinox.launcher_*.jar") do set "launcher=%%L"
start "" "%java%" -Xshare:auto -XX:+UseSerialGC -Xms64m -Xmn32m -XX:MetaspaceSize=128m -XX:MinHeapFreeRatio=40 -XX:MaxHeapFreeRatio=55 %demo% -jar "%launcher%" -nosplash %*
