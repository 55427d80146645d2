/** What `unitbook check --help` prints. */
export const CHECK_HELP = `unitbook check sets printed bills beside the right ones: which figure differs, by how much,
in whose favour, and which mistake makes the printed figures.

  unitbook check --bills FILE [--tariff FILE] [--other FILE]... [--bill N]
  unitbook check --bills FILE --memo | --letter | --json [--dispute FILE] [--on DAY]
  unitbook check --batch FILE --tariff FILE [--findings FILE] [--workers N] [--resume]
  unitbook check --join FILE... --tariff FILE [--findings FILE]

Files
  --bills FILE       account, own readings and printed bills in order of time, a JSON
                     document; whatever a bill prints can be left out but its two days
  --tariff FILE      takes the place of the file's tariff
  --other FILE       the tariff of another category of the same place, once for each: bills
                     by the wrong one are found
  --dispute FILE     the rules for disputes of the place: whom to write to and until when,
                     interest, how far back a claim reaches, a JSON document
                     One FILE can be "-": it is read from standard input.

What is checked
  --bill N           print only this bill, by its place in the file
  --tolerance MONEY  amounts that differ by no more than this agree; left out: 0

Output
  --memo             print the findings as a memo: claim, what is right, causes, clauses,
                     evidence, what is to be paid back
  --letter           print a letter to the billing office, in plain words
  --json             print everything as JSON, every number as text
  --on DAY           the day of the memo or letter, up to which interest runs, as
                     yyyy-mm-dd; left out: the clock's
  --locale TAG       group digits as this language does, such as en-IN;
                     left out: as the account says

A table of many accounts
  --batch FILE       a row for each printed bill, the rows of an account together and in
                     order of time: CSV with a first row, "-" for standard input. Findings
                     are printed, one JSON object a line, in the order of the rows
  --json-lines       the rows are JSON objects, one a line
  --findings FILE    write the findings there, and print the summary; left out: the other
                     way round, with the summary on standard error
  --unread FILE      keep rows there that cannot be used, as they stand; left out: beside
                     the findings
  --resume           go on where a check of the same table was broken off; with --findings
  --workers N        threads that check; left out: as many as there are cores
  --part I/N         only this part of the table, such as 2/7
  --join FILE        put findings of parts together, once for each, in their order; takes
                     no other option of a table but --tariff, --findings and --json
  --every            a line for bills that are right, too
  --since DAY        when all accounts joined, where the tariff asks
  --settlement-day MM-DD
                     the day on which their bank closes, where the tariff asks
  --json             print the summary as JSON

Exit status: 0 clean, 1 something was found (a bill that is wrong, an error or an open
question), 2 could not run.
`;
