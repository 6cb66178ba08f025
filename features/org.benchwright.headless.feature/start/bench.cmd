@echo off
rem Runs a Benchwright command in the terminal: bench --help. Needs a Java 17 or later on the path or in JAVA_HOME.
setlocal
call "%~dp0find-java.cmd"
if errorlevel 1 exit /b 2
rem The demo procedures lie beside this script in an archive.
set demo=
if exist "%~dp0procedures\" set demo="-Dbenchwright.procedures=%~dp0procedures"
for %%L in ("%~dp0plugins\org.eclipse.equinox.launcher_*.jar") do set "launcher=%%L"
rem A command line lives for seconds: start quickly rather than run fast in an hour.
"%java%" -Xshare:auto -XX:TieredStopAtLevel=1 -XX:+UseSerialGC %demo% -jar "%launcher%" -application org.benchwright.cli.application -data @none -nosplash %*
exit /b %errorlevel%
