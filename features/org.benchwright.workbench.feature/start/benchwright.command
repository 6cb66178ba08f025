#!/bin/sh
# Opens the Benchwright window. Needs a Java 17 or later on the path or in JAVA_HOME. The window has to be on the first thread here.
# Where it lies, also when it was started by a link to it.
here=$(cd "$(dirname "$(readlink -f "$0" 2>/dev/null || printf '%s' "$0")")" && pwd)
# shellcheck source=features/org.benchwright.headless.feature/start/find-java.sh
. "$here/find-java.sh"
# The demo procedures lie beside this script in an archive.
demo=$here/procedures
[ -d "$demo" ] || demo=
# A ledger that is named is the one to work on; without one it is the one in this user's bench folder.
ledger=
case ${1:-} in
"" | -*) ;;
*)
	ledger=$1
	shift
	;;
esac
exec "$java" -XstartOnFirstThread -Xshare:auto -XX:+UseSerialGC -Xms136m -Xmn32m -XX:MetaspaceSize=128m -XX:MinHeapFreeRatio=40 -XX:MaxHeapFreeRatio=55 ${demo:+"-Dbenchwright.procedures=$demo"} ${ledger:+"-Dbenchwright.ledger=$ledger"} -jar "$here"/plugins/org.eclipse.equinox.launcher_*.jar -nosplash "$@"
