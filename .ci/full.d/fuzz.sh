#!/usr/bin/env bash
# Every fuzz target for some minutes, two at a time on one core each, and a table of
# what each did. Usage: fuzz.sh [MINUTES [REGEXP [PACKAGE...]]], or FUZZ_MINUTES; five
# minutes, all targets and all packages stand for what is left out. What was found
# interesting is kept in FUZZ_CACHE, so that the next run goes on from there; a failing
# input is left in testdata/fuzz of its package.
set -euo pipefail
cd "$(dirname "$0")/../.."
minutes=${1:-${FUZZ_MINUTES:-5}}
wanted=${2:-.}
shift $(($# < 2 ? $# : 2))
cache=${FUZZ_CACHE:-$(go env GOCACHE)/fuzz/full}
tools=$(mktemp -d)
trap 'rm -rf "$tools"' EXIT

module=$(go list -m)
for package in $(go list "${@:-./...}"); do
	for target in $(go test -list '^Fuzz' "$package" | grep '^Fuzz' | grep -E "$wanted" || true); do
		binary=$tools/$(tr / _ <<<"$package").test
		[ -e "$binary" ] || go test -c -fuzz=Fuzz -o "$binary" "$package"
		printf '%s %s %s %s %s\n' ".${package#"$module"}" "$target" "$binary" "$cache/$package" "$tools/$target.log" >>"$tools/list"
	done
done

# one runs a target in its own folder, as go test does, and says what it did.
one() {
	local failed=0
	cd "$1"
	nice -n 10 "$3" -test.run '^$' -test.fuzz "^$2\$" -test.fuzztime "${minutes}m" -test.fuzzcachedir "$4" -test.parallel 1 >"$5" 2>&1 || failed=1
	local last
	last=$(grep -o 'execs: [0-9]* .*' "$5" | tail -1 || true)
	printf '%-40s %s %s\n' "$1" "$2" "${last:-no run}"
	# Up to Go 1.26 the end of the time can be taken for a fault (go.dev/issue/75804).
	if [ $failed = 1 ] && ! grep -q 'Failing input' "$5" && grep -q 'context deadline exceeded' "$5"; then
		failed=0
	fi
	if [ $failed = 1 ]; then
		tail -n 40 "$5"
		return 1
	fi
}
export -f one
export minutes
xargs -P 2 -L 1 bash -c 'one "$@"' one <"$tools/list"
