# Shared by releng/measure-all and releng/campaign-all; sourced, not run, behind setup.sh. Puts what a launcher printed into its place in a
# page of docs/: between the lines "<!-- NAME -->" and "<!-- end NAME -->".
# shellcheck shell=bash
# shellcheck disable=SC2154

# What the machine is, in one line, without anybody's name.
machine_words() {
	local mhz cache memory
	mhz=$(sed -n 's/^cpu MHz[^:]*: \([0-9]*\).*/\1/p' /proc/cpuinfo | head -1)
	cache=$(sed -n 's/^cache size[^:]*: //p' /proc/cpuinfo | head -1)
	memory=$(awk '/^MemTotal:/ { printf "%.0f GiB", $2 / 1048576 }' /proc/meminfo)
	printf '%s processors (%s%s%s), %s of memory, Linux %s, Java %s' "$(nproc)" "$(uname -m)" "${mhz:+, $mhz MHz}" "${cache:+, cache $cache}" \
		"$memory" "$(uname -r | cut -d. -f1,2)" "$(sed -n 's/^JAVA_VERSION="\(.*\)"/\1/p' "$JAVA_HOME/release")"
}

# Load of the last minute.
load_now() {
	cut -d' ' -f1 /proc/loadavg
}

# is_one_of NAME NAMES...: true if it is. Asked of all names before anything is run that takes an hour.
is_one_of() {
	local wanted=$1 name
	shift
	for name; do
		[ "$name" != "$wanted" ] || return 0
	done
	return 1
}

# True if a page has a place of that name, from its beginning to its end.
has_place() {
	grep -qxF "<!-- $2 -->" "$1" && grep -qxF "<!-- end $2 -->" "$1"
}

# put_in_place PAGE NAME FILE: the place's text becomes that of the file.
put_in_place() {
	awk -v begin="<!-- $2 -->" -v end="<!-- end $2 -->" -v file="$3" '
		$0 == begin { print; while ((getline line < file) > 0) print line; skipping = 1; next }
		$0 == end { skipping = 0 }
		!skipping { print }' "$1" >"$1.new"
	mv "$1.new" "$1"
}

# run_into PAGE NAME COMMAND...: runs a launcher, prints what it prints, and puts that with date, machine and load into the page. Its status
# is that of the launcher; nothing is put where it could not be run (status 2).
run_into() {
	local page=$1 name=$2 status=0 load began said place
	shift 2
	has_place "$page" "$name" || give_up "$page has no place named $name."
	said=$bench_home/$name.said
	place=$bench_home/$name.place
	load=$(load_now)
	began=$(date +%s)
	"$@" >"$said" || status=$?
	cat "$said"
	if [ "$status" -ge 2 ] || ! [ -s "$said" ]; then
		say "$name could not be run; $page keeps what it had."
		return 2
	fi
	{
		printf '\n`%s`, %s, %d s; %s; load before %s, at the end %s.\n\n```\n' "${*//"$bench_root/"/}" "$(date -u '+%F %H:%M UTC')" \
			$(($(date +%s) - began)) "$(machine_words)" "$load" "$(load_now)"
		cat "$said"
		printf '```\n\n'
	} >"$place"
	put_in_place "$page" "$name" "$place"
	return "$status"
}
