@echo off
rem Runs a Benchwright command in the terminal: bench --help. Needs a Java 17 or later on the path or in JAVA_HOME.
setlocal
set "java=java"
if defined JAVA_HOME set "java=%JAVA_HOME%\bin\java"
rem The demo procedures lie beside this script in an archive.
set demo=
if exist "%~dp0procedures\" set demo="-Dbenchwright.procedures=%~dp0procedures"
for %%L in ("%~dp0plugins\org.eclipse.equinox.launcher_*.jar") do set "launcher=%%L"
rem A command line lives for seconds: start quickly rather than run fast in an hour.
"%java%" -Xshare:auto -XX:TieredStopAtLevel=1 -XX:+UseSerialGC %demo% -jar "%launcher%" -application org.benchwright.cli.application -data @none -nosplash %*
exit /b %errorlevel%
