/** What `unitbook --help` prints. */
export const HELP = `unitbook reconciles the meter readings of a solar household with its electricity bill.

  unitbook bill      works out the bills of a household from its meter readings
  unitbook readings  says what is in a meter file, whatever its kind
  unitbook plant     compares what a plant makes with what it should, and lists its upkeep
  unitbook quote     works out what a plant that is not built yet would save and cost
  unitbook promise   sets readings against a quote: whether its saving came
  unitbook check     sets printed bills beside the right ones, and says which rule differs
  unitbook parquet   reads tables of bills kept in Parquet, and writes findings there
  unitbook tariff    checks tariff files, worked cases and a year under a tariff
  unitbook demo      shows a year of an invented household

For instance, May of a household with the way each line comes about:
  unitbook bill --household FILE --month 2025-05 --explain

unitbook COMMAND --help says what a command takes; unitbook --version prints the version.

Exit status: 0 clean, 1 something was found (an error or an open question), 2 could not run.
`;

/** What `unitbook bill --help` prints. */
export const BILL_HELP = `unitbook bill works out the bills of a household from its meter readings, or from
interval values.

  unitbook bill --tariff FILE --account FILE --readings FILE
  unitbook bill --tariff FILE --account FILE --intervals FILE [--zone ZONE]
  unitbook bill --household FILE [--tariff FILE]

Files
  --tariff FILE      the tariff, a JSON document
  --account FILE     connection, plant and meters, a JSON document
  --readings FILE    meter readings: a CSV list, a JSON document, or a meter file with
                     registers
  --intervals FILE   a meter file with interval values, of any size
  --household FILE   tariff, account and readings in one file, as the form saves it;
                     --tariff then takes the place of the file's tariff
                     One FILE can be "-": it is read from standard input.

Meter files
  --columns FILE     what the columns of a table are: see unitbook readings --help
  --day DAY          the day of a list of registers that has none
  --on DAY           bill from the readings of these days only, once for each; or
                     "--on first-days" for the first day of each month
  --zone ZONE        the time zone of the place, such as Europe/Amsterdam, where
                     intervals go by UTC or by one offset all year
  --cycle-day N      the day of the month on which billing periods of intervals
                     begin, 1 to 28; left out: 1

Output
  --month MONTH      print only this bill: its number, or a month as 2025-05
                     (every bill with a day in it); the passbook stays whole
  --estimates        print what estimated readings cost, after the bills
  --explain          print how each line comes about, down to readings and clauses
  --json             print the whole book as JSON, every number as exact text
  --locale TAG       group digits as this language does, such as en-IN;
                     left out: as the account says

  --today DAY        take this day, such as 2026-04-01, for today: no reading can
                     be later; left out: the day on the clock

Bills go to standard output, messages to standard error.
Exit status: 0 clean, 1 something was found (an error or an open question), 2 could not run.
`;

/** What `unitbook readings --help` prints. */
export const READINGS_HELP = `unitbook readings says what is in a meter file: its registers and channels, their
sums, the time they cover, what is missing and what is wrong.

  unitbook readings FILE [--columns FILE] [--day DAY] [--zone ZONE]
  unitbook readings FILE --propose
  unitbook readings FILE --monthly | --daily [--zone ZONE]
  unitbook readings FILE --document [--on DAY]...

Files
  FILE            NEM12 or NEM13, ESPI in XML, telegrams, a list of OBIS codes, a table,
                  or a list of readings; its content tells which. Of any size.
                  "-" for standard input.
  --columns FILE  what the columns of a table are: a JSON document that a person has
                  confirmed
  --propose       print such a document as the table suggests it, not confirmed
  --day DAY       the day of a list of registers that has none, such as 2026-04-01

Output
  --zone ZONE     the time zone of the place, such as Europe/Amsterdam, where the file
                  goes by UTC or by one offset all year
  --monthly       print the energy of intervals by calendar month
  --daily         print it by day, as CSV: day,import,export,generation in kWh
  --document      print the readings of registers as a readings document, for
                  unitbook bill --readings
  --on DAY        with --document: only the readings of this day; once for each day, or
                  "--on first-days" for the first day of each month
  --locale TAG    group digits as this language does, such as en-IN

Messages go to standard error as they are met; of each code the first 200 are printed.
Exit status: 0 clean, 1 something was found (an error or an open question), 2 could not run.
`;

/** What `unitbook plant --help` prints. */
export const PLANT_HELP = `unitbook plant compares what a plant made with what was to be expected of it, month by
month and day by day, and lists its upkeep. A low month is a finding, not a diagnosis.

  unitbook plant --plant FILE --household FILE
  unitbook plant --plant FILE --account FILE --readings FILE
  unitbook plant --plant FILE --days FILE [--columns FILE] [--zone ZONE]

Files
  --plant FILE       capacity, what is expected, and the diary, a JSON document;
                     left out: as the household file has it
  --household FILE   a household as the form saves it
  --account FILE     connection, plant and meters, a JSON document
  --readings FILE    meter readings with a generation meter
  --days FILE        a meter file with generation by interval or by day
  --columns FILE     what the columns of a table are: see unitbook readings --help
  --day DAY          the day of a list of registers that has none
  --on DAY           only the readings of these days, once for each; or
                     "--on first-days" for the first day of each month
  --zone ZONE        the time zone of the plant, such as Europe/Amsterdam, where the
                     days file goes by UTC or by one offset all year

  --locale TAG       group digits as this language does, such as en-IN
  --today DAY        take this day, such as 2026-04-01, for today: upkeep is due by it;
                     left out: the day on the clock

What months and days show is on the page; messages about the files go to standard error.
Exit status: 0 clean, 1 something was found (an error or an open question), 2 could not run.
`;

/** What `unitbook quote --help` prints. */
export const QUOTE_HELP = `unitbook quote works out what a plant that is not built yet would save and cost: every
bill of its life with it and without it, by the tariff of today and the rises of the quote.

  unitbook quote --quote FILE --tariff FILE [--draws N] [--sizes] [--flyer FILE]
  unitbook quote --quote FILE --tariff FILE --json
  unitbook quote --quote FILE --tariff FILE --csv TABLE

Files
  --quote FILE   the offer, twelve months of use, what the plant will make, and what the
                 figures hang on, a JSON document
  --tariff FILE  the tariff, a JSON document
  --flyer FILE   what a rival's flyer claims, a JSON document: each claim is printed
                 beside the same of the quote, and what to ask about it
  --against FILE another tariff that the customer could choose: the quote is worked out
                 under it, too; once for each
  --profile FILE a year of interval values: what the house takes from the grid without a
                 plant, and what the plant makes; own use then follows from them, and
                 tariffs with time blocks can be quoted
  --columns FILE what the columns of a table of interval values are
  --zone ZONE    the time zone of the household, where the file does not say
                 One FILE can be "-": it is read from standard input.

Output
  --draws N      how many random draws tell the range, where the quote says what is
                 uncertain: hundreds up to 100000, 0 for none; left out: 1000
  --sizes        print plants of other sizes beside the quoted one
  --json         print everything as JSON, every number as text
  --csv TABLE    print one table as CSV: months, years, cases, sizes, or band (what is
                 left of the price year by year, in random draws)
  --locale TAG   group digits as this language does, such as en-IN;
                 left out: as the quote says

Doubts about the quote go to standard error, before the page.
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
