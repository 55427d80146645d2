/** What `unitbook --help` prints. */
export const HELP = `unitbook reconciles the meter readings of a solar household with its electricity bill.

  unitbook bill     works out the bills of a household from its meter readings
  unitbook tariff   checks tariff files, worked cases and a year under a tariff
  unitbook demo     shows a year of an invented household

For instance, May of a household with the way each line comes about:
  unitbook bill --household FILE --month 2025-05 --explain

unitbook COMMAND --help says what a command takes; unitbook --version prints the version.

Exit status: 0 clean, 1 something was found (an error or an open question), 2 could not run.
`;

/** What `unitbook bill --help` prints. */
export const BILL_HELP = `unitbook bill works out the bills of a household from its meter readings.

  unitbook bill --tariff FILE --account FILE --readings FILE
  unitbook bill --household FILE [--tariff FILE]

Files
  --tariff FILE      the tariff, a JSON document
  --account FILE     connection, plant and meters, a JSON document
  --readings FILE    meter readings, a CSV list or a JSON document
  --household FILE   all three in one file, as the form saves it;
                     --tariff then takes the place of the file's tariff
                     One FILE can be "-": it is read from standard input.

Output
  --month MONTH      print only this bill: its number, or a month as 2025-05
                     (every bill with a day in it); the passbook stays whole
  --explain          print how each line comes about, down to readings and clauses
  --json             print the whole book as JSON, every number as exact text
  --locale TAG       group digits as this language does, such as en-IN;
                     left out: as the account says

  --today DAY        take this day, such as 2026-04-01, for today: no reading can
                     be later; left out: the day on the clock

Bills go to standard output, messages to standard error.
Exit status: 0 clean, 1 something was found (an error or an open question), 2 could not run.
`;

/** What `unitbook tariff --help` prints. */
export const TARIFF_HELP = `unitbook tariff checks tariff files and lists everything that is wrong with them.

  unitbook tariff FILE...
  unitbook tariff FILE --cases FILE [--case ID [--explain]]
  unitbook tariff FILE --year [--units UNITS] [--load KW] [--quantity NAME=VALUE]...
  unitbook tariff --schema

Worked cases
  --cases FILE           bill every worked case of a JSON document, and print each
                         figure that it expects beside what came out
  --case ID              only this case
  --explain              with --case: print how every line, quantity and ledger
                         comes about
  --json                 print all cases as JSON, every number as exact text

A year
  --year                 bill a plain household without a plant for every month that
                         the tariff covers, and find cliffs: one more unit that costs
                         many times the rate of its slab
  --units UNITS          whole units a month; left out: 300
  --load KW              the sanctioned load, where the tariff asks for it
  --quantity NAME=VALUE  anything else that the tariff asks for, once for each
  --cliff TIMES          how many times the rate of its slab makes a cliff;
                         left out: 3

  --locale TAG           group digits as this language does, such as en-IN
  --schema               print the JSON Schema of a tariff file, for an editor

Each problem stands on one line: file, line and column, what was found, what was
expected, what to do, and a code. One FILE can be "-": it is read from standard input.
Exit status: 0 clean, 1 something was found, a case differs or a month cannot be
billed, 2 could not run.
`;

/** What `unitbook demo --help` prints. */
export const DEMO_HELP = `unitbook demo shows a year of an invented household: its bills in short, one bill
in full, and the passbook of its units.

  unitbook demo

  --locale TAG   group digits as this language does, such as en or de

Exit status: 0.
`;
