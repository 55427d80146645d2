#!/bin/sh
# Checks a table on several hosts with GNU parallel over ssh, each taking parts of it, and puts the findings together.
#
#   over-ssh.sh HOSTS PARTS PROGRAM TABLE TARIFF > found.ndjson 2> summary
#
# HOSTS    as parallel's --sshlogin takes them, between commas; each has node, and the files under the same path
# PROGRAM  the check as a program: node PROGRAM '{"rows": …}'
# A part whose process or host dies is done again, on another host where there is one. What comes out is what one
# process would have written: parts are blocks of whole accounts, and their findings stand in the order of the table.
set -eu
hosts=$1 parts=$2 program=$3 table=$4 tariff=$5
# Exit status 1 says that something was found: for parallel that is no failure.
one='node '"$program"' "{\"rows\":\"'"$table"'\",\"tariff\":\"'"$tariff"'\",\"workers\":1,\"withTally\":true,\"part\":{\"index\":{},\"count\":'"$parts"'}}" 2>/dev/null; test $? -le 1'
seq "$parts" |
  parallel --keep-order --jobs 1 --retries 3 --sshlogin "$hosts" ${BEFORE:+--env BEFORE} "${BEFORE:-}${BEFORE:+; }$one" |
  node "$program" "{\"tariff\":\"$tariff\",\"isJoining\":true,\"summary\":true}"
