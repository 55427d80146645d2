#!/bin/sh
# Tries over-ssh.sh on two hosts, both of them this one on loopback, and kills one part's process half-way.
# Needs Debian's packages parallel and openssh-server; exits 0 where the findings are those of one process.
#
#   over-ssh-on-loopback.sh PROGRAM TABLE TARIFF
set -eu
here=$(cd "$(dirname "$0")" && pwd)
program=$1 table=$2 tariff=$3
work=$(mktemp -d)
servers=
trap 'for server in $servers; do kill "$server"; done; rm -rf "$work"' EXIT
mkdir -p /run/sshd
for port in 2231 2232; do
  ssh-keygen -q -t ed25519 -N '' -f "$work/host-$port"
  printf '%s\n' "Port $port" 'ListenAddress 127.0.0.1' "HostKey $work/host-$port" "PidFile $work/pid-$port" \
    "AuthorizedKeysFile $work/own.pub" 'StrictModes no' 'UsePAM no' 'PermitRootLogin prohibit-password' \
    'PasswordAuthentication no' >"$work/config-$port"
done
ssh-keygen -q -t ed25519 -N '' -f "$work/own"
for port in 2231 2232; do
  "$(command -v sshd || echo /usr/sbin/sshd)" -D -f "$work/config-$port" &
  servers="$servers $!"
done
ssh="ssh -i $work/own -o BatchMode=yes -o StrictHostKeyChecking=no -o UserKnownHostsFile=$work/known -o LogLevel=ERROR"
for port in 2231 2232; do
  tries=0
  until $ssh -p "$port" 127.0.0.1 true; do
    tries=$((tries + 1))
    test "$tries" -lt 50
    sleep 0.1
  done
done
node "$program" "{\"rows\":\"$table\",\"tariff\":\"$tariff\",\"workers\":1,\"summary\":true}" \
  >"$work/one.ndjson" 2>"$work/one.json" || test $? -eq 1
# The first process of part 2 kills itself before it is done.
BEFORE="if [ {} = 2 ] && mkdir $work/killed 2>/dev/null; then kill -9 \$\$; fi" \
  sh "$here/over-ssh.sh" "$ssh -p 2231 127.0.0.1,$ssh -p 2232 127.0.0.1" 7 "$program" "$table" "$tariff" \
  >"$work/hosts.ndjson" 2>"$work/hosts.json"
test -d "$work/killed"
cmp "$work/one.ndjson" "$work/hosts.ndjson"
cmp "$work/one.json" "$work/hosts.json"
echo "the same from two hosts as from one process: $(wc -l <"$work/one.ndjson") findings"
