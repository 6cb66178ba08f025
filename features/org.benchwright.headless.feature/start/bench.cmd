@echo off
rem Runs a Benchwright command in the terminal: bench --help. Needs a Java 17 or later on the path or in JAVA_HOME.
setlocal
call "%~dp0find-java.cmd"
if errorlevel 1 exit /b 2
rem The demo procedures lie beside this script in an archive.
set demo=
if exist "%~dp0procedures\" set demo="-Dbenchwright.procedures=%~dp0procedures"
for %%L in ("%~dp0plugins\org.eclipse.equinox.launcher_*.jar") do set "launcher=%%L"
rem What is printed is UTF-8: the console is told so, and afterwards what it had before.
set "page="
for /f "tokens=2 delims=:." %%P in ('chcp') do set "page=%%P"
if defined page chcp 65001 >nul
rem A command line lives for seconds: start quickly rather than run fast in an hour.
"%java%" -Xshare:auto -XX:TieredStopAtLevel=1 -XX:+UseSerialGC %demo% -jar "%launcher%" -application org.benchwright.cli.application -data @none -nosplash %*
set "status=%errorlevel%"
if defined page chcp %page% >nul
exit /b %status%
