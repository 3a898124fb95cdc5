# shellcheck shell=bash disable=SC2034 # the scripts that source it use its variables
# What the scripts of this folder share; they source it.

root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
tools=$root/releng/.tools

fail() {
	printf '%s: %s\n' "${0##*/}" "$*" >&2
	exit 1
}

# Prints the home of a Java of release 17 or later that has the command $1. Reads its release file, since starting
# Java only to ask for its version would slow each start down.
find_java() {
	local home version
	for home in "${JAVA_HOME:-}" "$(path_home "$1")" /usr/lib/jvm/*; do
		[[ -n $home && -x $home/bin/$1 && -r $home/release ]] || continue
		version=$(sed -n 's/^JAVA_VERSION="\([0-9]*\).*/\1/p' "$home/release")
		if ((${version:-0} >= 17)); then
			printf '%s\n' "$home"
			return
		fi
	done
	return 1
}

path_home() {
	local command
	command=$(command -v "$1") || return 0
	command=$(readlink -f "$command")
	printf '%s\n' "${command%/bin/*}"
}

# Copies Maven's output to the log $1 and prints a line for each module and each test class.
progress() {
	awk -v log_file="$1" '
		{ print > log_file; fflush(log_file) }
		/^\[INFO\] Building .*\[[0-9]+\/[0-9]+\]$/ { print $NF " " $3; fflush() }
		/^Tests run:.* in / { sub(/, Time elapsed.* in /, "  "); print "    " $0; fflush() }
	'
}

# Prints what went wrong according to the log $1. The grammar's generator ends Maven without a word of Maven's own.
explain_failure() {
	local problems hints='^\[ERROR\] *$|does not match a valid id pattern|^\[ERROR\] +-> \[Help|[Rr]e-run Maven|\[Help 1\] http|read the following|After correcting|mvn <args>'
	problems=$(grep '^\[ERROR\]' "$1" | grep -vE "$hints") ||
		problems=$(grep -E '^[0-9]+ +ERROR |^Caused by: ' "$1") ||
		problems=$(tail -n 20 "$1")
	printf '\nThe build failed:\n%s\nThe full log is %s\n' "$(head -n 40 <<<"$problems")" "$1" >&2
}

# A class whose source was deleted, moved or renamed would be used as before, by tests and by other bundles; the compiler
# leaves both. Then all is compiled anew.
drop_classes_without_source() {
	local bundle class source
	for bundle in "$root"/bundles/*; do
		[[ -d $bundle/target/classes ]] || continue
		while IFS= read -r class; do
			source=${class#"$bundle"/target/classes/}
			source=${source%.class}.java
			if [[ ! -e $bundle/src/$source && ! -e $bundle/src-gen/$source ]]; then
				echo "All is compiled anew: ${source%.java} of ${bundle##*/} has no source."
				# the platform in which the tests run keeps what it read of plugin.xml
				rm -rf "$root"/bundles/*/target/classes "$root"/bundles/*.tests/target/work
				return
			fi
		done < <(find "$bundle/target/classes" -name '*.class' ! -name '*$*')
	done
}
