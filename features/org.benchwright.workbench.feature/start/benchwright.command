#!/bin/sh
# Opens the Benchwright window. Needs a Java 17 or later on the path or in JAVA_HOME. The window has to be on the first thread here.
here=$(cd "$(dirname "$0")" && pwd)
# shellcheck source=features/org.benchwright.headless.feature/start/find-java.sh
. "$here/find-java.sh"
# The demo procedures lie beside this script in an archive.
demo=$here/procedures
[ -d "$demo" ] || demo=
exec "$java" -XstartOnFirstThread -Xshare:auto -XX:+UseSerialGC -Xms136m -Xmn32m -XX:MetaspaceSize=128m -XX:MinHeapFreeRatio=40 -XX:MaxHeapFreeRatio=55 ${demo:+"-Dbenchwright.procedures=$demo"} -jar "$here"/plugins/org.eclipse.equinox.launcher_*.jar -nosplash "$@"
