#!/bin/sh
# Tries slurm-array.sh on a cluster of this one host, and kills one part's process once.
# Needs Debian's packages slurm-wlm and munge, and root; exits 0 where the findings are those of one process.
#
#   slurm-array-on-loopback.sh PROGRAM TABLE TARIFF
set -eu
here=$(cd "$(dirname "$0")" && pwd)
program=$1 table=$2 tariff=$3
work=$(mktemp -d)
host=$(hostname)
servers=
trap 'for server in $servers; do kill "$server" 2>/dev/null || true; done; sleep 1; rm -rf "$work"' EXIT
chmod 755 "$work"
head -c 1024 /dev/urandom >"$work/key"
chmod 600 "$work/key"
mkdir -p "$work/state" "$work/spool" "$work/munge"
munged --foreground --force --key-file="$work/key" --socket="$work/munge/socket" --pid-file="$work/munge/pid" \
  --log-file="$work/munge/log" --seed-file="$work/munge/seed" 2>"$work/munge.log" &
servers="$servers $!"
cat >"$work/slurm.conf" <<CONF
ClusterName=loopback
SlurmctldHost=$host(127.0.0.1)
AuthType=auth/munge
AuthInfo=socket=$work/munge/socket
CryptoType=crypto/munge
SlurmUser=root
SlurmdUser=root
SlurmctldPort=26817
SlurmdPort=26818
SlurmctldPidFile=$work/slurmctld.pid
SlurmdPidFile=$work/slurmd.pid
StateSaveLocation=$work/state
SlurmdSpoolDir=$work/spool
ProctrackType=proctrack/linuxproc
TaskPlugin=task/none
MpiDefault=none
ReturnToService=2
SchedulerType=sched/backfill
SelectType=select/cons_tres
SelectTypeParameters=CR_Core
NodeName=$host NodeAddr=127.0.0.1 CPUs=$(nproc) State=UNKNOWN
PartitionName=all Nodes=$host Default=YES State=UP
CONF
export SLURM_CONF="$work/slurm.conf"
slurmctld -D -f "$work/slurm.conf" >"$work/slurmctld.log" 2>&1 &
servers="$servers $!"
slurmd -D -f "$work/slurm.conf" -N "$host" >"$work/slurmd.log" 2>&1 &
servers="$servers $!"
tries=0
until sinfo --noheader --format=%t 2>/dev/null | grep -q idle; do
  tries=$((tries + 1))
  if test "$tries" -ge 60; then
    tail -n 20 "$work"/*.log >&2
    exit 1
  fi
  sleep 0.5
done
node "$program" "{\"rows\":\"$table\",\"tariff\":\"$tariff\",\"workers\":1,\"summary\":true}" \
  >"$work/one.ndjson" 2>"$work/one.json" || test $? -eq 1
# The first process of part 2 is killed before it is done.
BEFORE="if [ \$part = 2 ] && mkdir $work/killed 2>/dev/null; then sh -c 'kill -9 \$PPID'; fi" \
  sh "$here/slurm-array.sh" 5 "$program" "$table" "$tariff" "$work/found"
test -d "$work/killed"
cmp "$work/one.ndjson" "$work/found/found.ndjson"
cmp "$work/one.json" "$work/found/summary.json"
echo "the same from a job array as from one process: $(wc -l <"$work/one.ndjson") findings"
