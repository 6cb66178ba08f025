@echo off
rem Opens the Benchwright window. Needs a Java 17 or later on the path or in JAVA_HOME.
setlocal
call "%~dp0find-java.cmd"
rem Whoever has clicked on this file would not see why nothing comes.
if errorlevel 1 pause & exit /b 2
for %%J in ("%java%") do set "javaw=%%~dpJjavaw.exe"
rem The demo procedures lie beside this script in an archive.
set demo=
if exist "%~dp0procedures\" set demo="-Dbenchwright.procedures=%~dp0procedures"
rem A ledger that is named is the one to work on; without one it is the one in this user's bench folder.
set "ledger=%~1"
if "%ledger:~0,1%"=="-" set ledger=
if defined ledger set ledger="-Dbenchwright.ledger=%~f1"
for %%L in ("%~dp0plugins\org.eclipse.equinox.launcher_*.jar") do set "launcher=%%L"
start "" "%javaw%" -Xshare:auto -XX:+UseSerialGC -Xms136m -Xmn32m -XX:MetaspaceSize=128m -XX:MinHeapFreeRatio=40 -XX:MaxHeapFreeRatio=55 %demo% %ledger% -jar "%launcher%" -nosplash %*
