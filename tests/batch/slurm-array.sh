#!/bin/sh
# Checks a table as an array of Slurm jobs, each taking one part of it, and puts the findings together.
#
#   slurm-array.sh PARTS PROGRAM TABLE TARIFF FOLDER
#
# FOLDER is on a disk that all nodes share; the findings are left there as found.ndjson, the summary as summary.json.
# A process that is killed is begun again where its journal ended; a job whose node is lost is begun again by Slurm.
set -eu
parts=$1 program=$2 table=$3 tariff=$4 folder=$5
mkdir -p "$folder"
sbatch --parsable --requeue --array="1-$parts" --output="$folder/part-%a.log" --wait >&2 <<JOB
#!/bin/sh
part=\$SLURM_ARRAY_TASK_ID
for attempt in 1 2 3; do
  (${BEFORE:-true}; exec node "$program" "{\"rows\":\"$table\",\"tariff\":\"$tariff\",\"workers\":1,\"withTally\":true,\"isResumed\":true,\"out\":\"$folder/part-\$part.ndjson\",\"part\":{\"index\":\$part,\"count\":$parts}}")
  # 1 says that something was found.
  test \$? -le 1 && exit 0
done
exit 1
JOB
for part in $(seq "$parts"); do cat "$folder/part-$part.ndjson"; done |
  node "$program" "{\"tariff\":\"$tariff\",\"isJoining\":true,\"summary\":true}" \
    >"$folder/found.ndjson" 2>"$folder/summary.json"
