# Shared by all scripts beside this folder; sourced, not run.
# shellcheck shell=bash
# What stands here and is not used here is used there.
# shellcheck disable=SC2034

bench_root=$(cd "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")/../.." && pwd)
# Everything the scripts leave behind is in this one folder, which git ignores.
bench_home=$bench_root/.bench
maven_version=3.9.11

# What the build and the product need beside bash and the basic tools: a command to look for, and the Debian package
# that brings it.
needed_packages=(
	"javac openjdk-17-jdk-headless"
	"mvn maven"
)

# What the window needs besides: a file to look for, and the Debian package that brings it. The last one calls whoever is near when a unit
# needs somebody.
window_packages=(
	"/usr/lib/x86_64-linux-gnu/libgtk-3.so.0 libgtk-3-0"
	"/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf fonts-dejavu-core"
	"/usr/bin/notify-send libnotify-bin"
)

# What the tests need besides: a screen that nobody looks at, a daemon that shows notifications, and an editor with a client of the language server protocol.
window_test_packages=(
	"${window_packages[@]}"
	"/usr/bin/Xvfb xvfb"
	"/usr/bin/xauth xauth"
	"/usr/bin/dbus-launch dbus-x11"
	"/usr/bin/xdotool xdotool"
	"/usr/bin/dunst dunst"
	"/usr/bin/nvim neovim"
)

# What the shared ledger's tests need besides: a PostgreSQL server to start.
store_test_packages=(
	"/usr/lib/postgresql/15/bin/postgres postgresql-15"
)

# What the watch's tests need besides: a C compiler with its library and libmodbus for one peer, Node.js and npm for the other, and systemd to read its unit.
watch_test_packages=(
	"/usr/bin/gcc gcc"
	"/usr/include/errno.h libc6-dev"
	"/usr/include/modbus/modbus.h libmodbus-dev"
	"/usr/bin/node nodejs"
	"/usr/bin/npm npm"
	"/usr/bin/systemd-analyze systemd"
)

say() {
	printf '%s\n' "$*" >&2
}

# Ends with status 2: the command could not be started, which says nothing about any unit.
give_up() {
	say "$@"
	exit 2
}

# Prints the major version of the JDK in a folder, or nothing. Reads a file rather than starting a JVM: this runs at
# every start.
jdk_major() {
	[ -x "$1/bin/javac" ] && [ -r "$1/release" ] || return 0
	sed -n 's/^JAVA_VERSION="\([0-9]*\).*/\1/p' "$1/release"
}

# Sets JAVA_HOME to a JDK 17 or later: the one that is set, the one on the path, or one where Debian puts it.
find_jdk() {
	local candidate on_path
	on_path=$(readlink -f "$(command -v javac || true)" || true)
	for candidate in "${JAVA_HOME:-}" "${on_path%/bin/javac}" /usr/lib/jvm/*-17-* /usr/lib/jvm/*; do
		[ -n "$candidate" ] || continue
		local major
		major=$(jdk_major "$candidate")
		if [ -n "$major" ] && [ "$major" -ge 17 ]; then
			export JAVA_HOME=$candidate
			return 0
		fi
	done
	return 1
}

# Prints the packages of needed_packages that are missing.
missing_packages() {
	local entry command package
	for entry in "${needed_packages[@]}"; do
		read -r command package <<<"$entry"
		if [ "$command" = javac ]; then
			find_jdk || printf '%s\n' "$package"
		elif ! command -v "$command" >/dev/null; then
			printf '%s\n' "$package"
		fi
	done
}

# Prints the packages of these entries ("file package") whose file is missing.
missing_files() {
	local entry file package
	for entry in "$@"; do
		read -r file package <<<"$entry"
		[ -e "$file" ] || printf '%s\n' "$package"
	done
}

# Installs what the build and the product need, and the packages of the entries ("file package") given.
install_packages() {
	local missing=()
	mapfile -t missing < <(missing_packages; missing_files "$@")
	if [ "${#missing[@]}" -gt 0 ]; then
		if [ "$(id -u)" -ne 0 ] || ! command -v apt-get >/dev/null; then
			give_up "Benchwright needs more on this machine. As root, run: apt-get install -y ${missing[*]}"
		fi
		say "Installing ${missing[*]} ..."
		{ apt-get update && DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends "${missing[@]}"; } \
			>"$bench_home/apt.log" 2>&1 </dev/null ||
			give_up "Could not install ${missing[*]}; see $bench_home/apt.log"
	fi
	find_jdk || give_up "No JDK 17 was found. Set JAVA_HOME to one."
}

# Sets maven to a Maven that the build works with. The installed one is too old on some systems (Tycho 4 asks for 3.9),
# but can fetch the right one. It does so from outside the checkout, as it stops at an option in .mvn/maven.config.
fetch_maven() {
	local home=$bench_home/maven/apache-maven-$maven_version
	maven=$home/bin/mvn
	[ -x "$maven" ] && return 0
	local elsewhere
	elsewhere=$(mktemp -d)
	(cd "$elsewhere" && mvn -B -q org.apache.maven.plugins:maven-dependency-plugin:3.8.1:unpack \
		"-Dartifact=org.apache.maven:apache-maven:$maven_version:zip:bin" "-DoutputDirectory=$elsewhere/out") \
		>"$bench_home/fetch-maven.log" 2>&1 </dev/null ||
		give_up "Could not fetch Maven $maven_version; see $bench_home/fetch-maven.log"
	mkdir -p "$bench_home/maven"
	rm -rf "$home"
	mv "$elsewhere/out/apache-maven-$maven_version" "$home"
	rm -rf "$elsewhere"
	chmod +x "$maven"
}

# Makes ready for a build: nobody else builds meanwhile, and what it needs is there, the packages of the entries ("file package") given too.
prepare_build() {
	lock_build
	install_packages "$@"
	fetch_maven
}

# What run_test runs Maven in, such as on_a_screen; mostly nothing.
maven_runs_in=()

# run_test BUNDLE TEST LOG [OPTION...]: builds what the tests of a bundle need and runs one of them, with these options for its Java machine. BUNDLE is
# the short name (ledger). What Maven says goes into LOG; its status is the function's.
run_test() {
	local bundle=$1 test=$2 log=$3 option options=
	shift 3
	for option; do
		# Quotes for whoever takes the line apart: a folder in it may have blanks in its name.
		# shellcheck disable=SC2089
		options+="${options:+ }\"$option\""
	done
	# shellcheck disable=SC2090
	(cd "$bench_root" && "${maven_runs_in[@]}" "$maven" -B -ntp verify -pl "bundles/org.benchwright.$bundle.tests" -am \
		"-Dtest=$test" -Dsurefire.failIfNoSpecifiedTests=false -DfailIfNoTests=false ${options:+"-Dtycho.testArgLine=$options"}) \
		>"$log" 2>&1 </dev/null
}

# Runs a command on a screen that nobody looks at: the window's tests must not depend on anybody's. Its size is in screen_size. No picture tells
# what the machine is called on which it was taken.
screen_size=1920x1080
on_a_screen() {
	HOSTNAME=bench xvfb-run -a -s "-screen 0 ${screen_size}x24" dbus-run-session -- "$@"
}

# One build at a time in a checkout: takes the lock on descriptor 8 until the calling (sub)shell ends.
lock_build() {
	mkdir -p "$bench_home"
	exec 8>"$bench_home/build.lock"
	if ! flock -n 8; then
		say "Another build of this checkout is running; waiting for it ..."
		flock 8
	fi
}

# Minutes without a word look like a program that hangs. Whoever sits at a terminal sees how far it is, and that time goes on.
tell_progress() {
	if [ ! -t 2 ]; then
		cat >/dev/null
		return
	fi
	local part='fetching what it is built from' line since=$SECONDS status
	sed -u -n 's/^\[INFO\] Building .*\[\([0-9]*\)\/\([0-9]*\)\]$/part \1 of \2/p' | while :; do
		printf '\r  %-31s %3d:%02d min' "$part" $(((SECONDS - since) / 60)) $(((SECONDS - since) % 60)) >&2
		status=0
		IFS= read -r -t 5 line || status=$?
		if [ "$status" -eq 0 ]; then
			part=$line
		elif [ "$status" -le 128 ]; then
			break # The build has ended; above 128 the five seconds have.
		fi
	done
	printf '\r%50s\r' '' >&2
}

# Prints a digest of everything the product is made from: names and contents, so that a copy, a fresh clone or a
# change of branch and back gives the same one.
source_stamp() {
	(
		cd "$bench_root" || exit
		find pom.xml .mvn README.md DEVELOPERS.md bundles features releng docs \
			\( -name target -o -name src-gen -o -name '*.tests' -o -name 'org.benchwright.testkit' -o -name '.*' ! -name .mvn \) -prune \
			-o -type f -print0 | LC_ALL=C sort -z | xargs -0 sha256sum | sha256sum | cut -c 1-16
	)
}

product_of() {
	printf '%s\n' "$bench_home/products/$1"
}

# A product is ready once this file is there. Whoever runs the product holds a shared lock on it.
ready_file() {
	printf '%s/ready\n' "$(product_of "$1")"
}

# Starts the product of a stamp with arguments, in place of this process.
start_product() {
	local product launcher
	product=$(product_of "$1")
	shift
	launcher=("$product"/plugins/org.eclipse.equinox.launcher_*.jar)
	# A command line lives for seconds: start quickly rather than run fast in an hour.
	exec "$JAVA_HOME/bin/java" -Xshare:auto -XX:TieredStopAtLevel=1 -XX:+UseSerialGC -Djava.awt.headless=true \
		"-Dbenchwright.procedures=$bench_root/procedures" \
		-jar "${launcher[0]}" -configuration "$product/configuration" -data @none -nosplash "$@"
}

# How a window is started, as the product's own start script does; why stands there.
window_jvm=(-Xshare:auto -XX:+UseSerialGC -Xms136m -Xmn32m -XX:MetaspaceSize=128m -XX:MinHeapFreeRatio=40 -XX:MaxHeapFreeRatio=55
	-XX:+IgnoreUnrecognizedVMOptions -XX:TrimNativeHeapInterval=60000)
window_environment=(MALLOC_ARENA_MAX=2 GDK_GL=disable)

# Without a session bus the toolkit complains, twice, that it finds none; with one a desktop that logs out asks the window first.
has_session_bus() {
	[ -n "${DBUS_SESSION_BUS_ADDRESS:-}" ] || [ -S "${XDG_RUNTIME_DIR:-/run/user/$(id -u)}/bus" ]
}

# Opens the window of a stamp's product, in place of this process. What follows the stamp goes to the JVM.
start_window() {
	local product launcher
	product=$(product_of "$1")/window
	shift
	launcher=("$product"/plugins/org.eclipse.equinox.launcher_*.jar)
	has_session_bus || window_jvm+=(-Dorg.eclipse.swt.internal.SessionManagerDBus.disable=true)
	exec env "${window_environment[@]}" "$JAVA_HOME/bin/java" "${window_jvm[@]}" -Djava.awt.headless=true \
		"-Dbenchwright.procedures=$bench_root/procedures" "$@" -jar "${launcher[0]}" -configuration "$product/configuration" -nosplash
}

# Keeps the product that the build has just put together, under the stamp of its sources. It is a copy, because a test
# may still be running from an older one while the next build deletes its target folders.
keep_product() {
	local stamp=$1 product built
	product=$(product_of "$stamp")
	built=$bench_root/releng/org.benchwright.product/target/products
	[ -e "$(ready_file "$stamp")" ] && return 0
	rm -rf "$product"
	mkdir -p "$bench_home/products"
	# Commands have a product of their own, without a bundle of the window in it: they start as quickly as ever.
	cp -R "$built/org.benchwright.headless/linux/gtk/x86_64" "$product"
	cp -R "$built/org.benchwright.workbench/linux/gtk/x86_64" "$product/window"
	# The first start writes the framework's cache; done here, no later start has to, nor two at once.
	(start_product "$stamp" --version) >"$bench_home/first-start.log" 2>&1 </dev/null ||
		give_up "The product was built but does not start; see $bench_home/first-start.log"
	touch "$(ready_file "$stamp")"
	forget_unused_products "$stamp"
}

# Deletes the other products, but not one that somebody still runs.
forget_unused_products() {
	local product
	for product in "$bench_home"/products/*; do
		[ "$product" = "$(product_of "$1")" ] && continue
		if [ ! -e "$product/ready" ] || flock -n "$product/ready" true; then
			rm -rf "$product"
		fi
	done
}

# end_with_result STATUS REPORT LOG: the end of a launcher. Prints the report, whose last line is "result: ok" or "result: missed, WHAT"; where
# something failed, STATUS is not 0, and that line becomes "result: failed, see LOG". Status 0 only if all is well, 1 otherwise.
end_with_result() {
	if [ "$1" -ne 0 ]; then
		grep -v '^result: ' "$2" || true
		printf 'result: failed, see %s\n' "${3#"$bench_root/"}"
		exit 1
	fi
	cat "$2"
	case $(tail -n 1 "$2") in
	"result: ok"*) exit 0 ;;
	*) exit 1 ;;
	esac
}
