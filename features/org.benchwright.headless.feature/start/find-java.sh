# Sets java to a Java 17 or later: that of JAVA_HOME, else the one on the path. Says what is missing and ends with 2 where there is none.
# Sourced by the start scripts, not run. Reads a file rather than starting a Java, which every command would have to wait for.
# shellcheck shell=sh
java=${JAVA_HOME:+$JAVA_HOME/bin/}java
found=$(command -v "$java" || :)
home=$(readlink -f "$found" 2>/dev/null || :)
home=${home%/bin/java}
major=
if [ -n "$found" ]; then
	if [ -r "$home/release" ]; then
		major=$(sed -n 's/^JAVA_VERSION="\([0-9]*\).*/\1/p' "$home/release")
	else
		major=$("$java" -version 2>&1 | sed -n 's/.* version "\([0-9]*\).*/\1/p')
	fi
fi
if [ "${major:-0}" -lt 17 ]; then
	if [ -n "$major" ]; then
		echo "Benchwright needs Java 17 or later, and $java is an older one." >&2
	else
		echo "Benchwright needs Java 17 or later, and there is no $java." >&2
	fi
	echo "Install one, and put its bin folder on the path, or its own folder into JAVA_HOME." >&2
	exit 2
fi
