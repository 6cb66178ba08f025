@echo off
rem Sets java to a Java 17 or later: that of JAVA_HOME, else the one on the path. Says what is missing and ends with 2 where there is none.
rem Called by the start scripts, not run.
set "java="
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "java=%JAVA_HOME%\bin\java.exe"
if not defined JAVA_HOME for %%J in (java.exe) do set "java=%%~$PATH:J"
if not defined java goto :missing
for %%J in ("%java%") do set "release=%%~dpJ..\release"
set "version=17"
if exist "%release%" for /f "usebackq tokens=2 delims==" %%V in (`findstr /b "JAVA_VERSION=" "%release%"`) do set "version=%%~V"
for /f "delims=." %%M in ("%version%") do if %%M LSS 17 goto :missing
exit /b 0
:missing
echo Benchwright needs Java 17 or later, and none was found. 1>&2
echo Install one, and put its bin folder on the path, or its own folder into JAVA_HOME. 1>&2
exit /b 2
