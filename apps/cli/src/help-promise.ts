/** What `unitbook promise --help` prints. */
export const PROMISE_HELP = `unitbook promise sets readings against a quote: whether its saving came, and why it differs.

  unitbook promise --quote FILE --tariff FILE --household FILE [--now FILE] [--json]
  unitbook promise --quote FILE --tariff FILE --account FILE --readings FILE [--now FILE]
  unitbook promise --quote FILE --tariff FILE --household FILE --profile FILE

Files
  --quote FILE      the quote, a JSON document
  --tariff FILE     the tariff that it was worked out by
  --now FILE        the tariff that bills are made by today; left out: the same
  --household FILE  the household's account and readings, a JSON document
  --account FILE    the account, a JSON document
  --readings FILE   the readings of both meters since the plant runs: a CSV list, or a meter
                    file (see unitbook bill --help)
  --columns FILE    what the columns of a table are
  --profile FILE    the year of interval values that the quote was worked out by: time
                    blocks and netting inside windows of time ask for it
  --profile-columns FILE
                    what the columns of a table of interval values are
  --zone ZONE       the time zone of the household, where the profile does not say
                    One FILE can be "-": it is read from standard input.

Readings of meter files
  --day DAY         the day of readings without a date, as yyyy-mm-dd
  --on DAY          take readings of these days only; "first-days" for those of each month
  --today DAY       the day after which a reading cannot be; left out: the clock's

Output
  --json            print everything as JSON, every number as text
  --locale TAG      group digits as this language does, such as en-IN;
                    left out: as the quote says

Exit status: 0 clean, 1 something was found (an error or an open question), 2 could not run.
`;
