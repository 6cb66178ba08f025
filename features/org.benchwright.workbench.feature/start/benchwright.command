#!/bin/sh
# Opens the Benchwright window. Needs a Java 17 or later on the path or in JAVA_HOME. The window has to be on the first thread here.
here=$(cd "$(dirname "$0")" && pwd)
java=${JAVA_HOME:+$JAVA_HOME/bin/}java
exec "$java" -XstartOnFirstThread -Xshare:auto -XX:+UseSerialGC -Xms64m -XX:MinHeapFreeRatio=20 -XX:MaxHeapFreeRatio=40 -jar "$here"/plugins/org.eclipse.equinox.launcher_*.jar -nosplash "$@"
