#!/usr/bin/env bash
# Two processes on one PostgreSQL server (Debian: postgresql), which this starts by itself:
# the suite of stores on all three, races and streams of two processes, plans moved to the
# database and back, and kills: of the processes (KILLS, 50), of the server (10) and of a
# broker, with everything that is pushed (Debian: mosquitto). Then 10,000 plans and 2,000
# streams over two processes, and the recipe of DEVELOPERS.md word for word.
set -euo pipefail
cd "$(dirname "$0")/../.."
PATH=$PATH:/usr/sbin
found() { ls -d /usr/lib/postgresql/*/bin 2>/dev/null | sort -V | tail -1; }
if { [ -z "$(found)" ] || ! command -v mosquitto nginx >/dev/null; } && [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null; then
	apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends postgresql mosquitto mosquitto-clients nginx-light >/dev/null
fi
bin=$(found)
[ -n "$bin" ] || {
	printf 'the database is missing: install postgresql\n' >&2
	exit 1
}

# A server of its own, as a user of its own: it does not run as root.
home=$(mktemp -d)
as=()
if [ "$(id -u)" = 0 ]; then
	chown postgres "$home"
	as=(runuser -u postgres --)
fi
cat >"$home/start" <<SH
rm -f "$home/data/postmaster.pid"
cd / && ${as[*]} "$bin/pg_ctl" -D "$home/data" -l "$home/log" -w -t 30 start
SH
stop() { (cd / && "${as[@]}" "$bin/pg_ctl" -D "$home/data" -m immediate stop >/dev/null 2>&1) || true; rm -rf "$home"; }
trap stop EXIT
(cd / && "${as[@]}" "$bin/initdb" -D "$home/data" -A trust -U cook >/dev/null)
port=$(python3 -c 'import socket; s = socket.socket(); s.bind(("127.0.0.1", 0)); print(s.getsockname()[1])')
printf "port = %s\nlisten_addresses = '127.0.0.1'\nunix_socket_directories = '%s'\n" "$port" "$home" | "${as[@]}" tee -a "$home/data/postgresql.conf" >/dev/null
sh "$home/start" >/dev/null
database=(-postgres "postgres://cook@127.0.0.1:$port/postgres" -postgres-data "$home/data" -postgres-start "sh $home/start")

go test ./api/store -count 1 -v "${database[@]}" -run 'Stores|Postgres|AtOnce|Refused|Between|Lease|Line' | grep -E '^ *(---|ok|FAIL|panic)'
go test ./cmd/cookday -count 1 -v "${database[@]}" -run 'Moves|Addresses'
go test ./api -count 1 -v "${database[@]}" -run 'OtherProcessOfADatabase|RacesOfTwo|ServerGoes'
go test ./api/push -count 1 -v "${database[@]}" -mosquitto "$(command -v mosquitto)" -run NothingIsForgotten -kill "${KILLS:-50}" -broker-kill 10 -database-kill 10 -timeout 30m
go test ./api -count 1 -v "${database[@]}" -load -run 'TwoProcessesUnderLoad' -timeout 30m

# The recipe, word for word: what stands in DEVELOPERS.md between ```sh and ```.
command -v nginx >/dev/null || {
	printf 'the proxy is missing: install nginx\n' >&2
	exit 1
}
blocks() { awk '/^## Two processes/ {on = 1; next} /^## / {on = 0} on && /^```sh/ {block = 1; next} /^```/ {block = 0} on && block' DEVELOPERS.md; }
kitchen=$(mktemp -d)
blocks >"$kitchen/recipe"
go build -o "$kitchen/" ./cmd/cookday
cp examples/backyard-party/request.yaml "$kitchen/hello.yaml"
(
	cd "$kitchen"
	export PGHOST=$home PGPORT=$port PGUSER=cook PATH=$kitchen:$PATH
	trap 'kill $(cat proxy.pid) $(jobs -p) 2>/dev/null || true; wait; rm -rf "$kitchen"' EXIT
	cookday listen --store plans.db --address 127.0.0.1:0 --log none --drain 0s >file.txt & # a file with a plan
	for _ in $(seq 100); do file=$(grep -o -m 1 'http://[0-9.:]*' file.txt) && break || sleep 0.1; done
	curl -sf -H 'Content-Type: application/yaml' --data-binary @hello.yaml -o /dev/null "$file/v1/plans?trial=true"
	kill $! && wait $! || true
	set -eux
	. ./recipe
	[ "$(cookday store list --store postgres:///plans | wc -l)" = 3 ]
)
