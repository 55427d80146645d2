const numbered = (prefix: string, numbers: readonly string[]): string[] =>
  numbers.map((number) => `${prefix}${number}`);

const fromTo = (first: number, last: number): string[] =>
  Array.from({ length: last - first + 1 }, (_, index) => String(first + index));

const words = (text: string): string[] => text.split(' ');

/**
 * Every worked example, cause and reference row that this engine is measured against. Each is a case or
 * waits with a reason; a part of one may be a case of its own, such as "E9-step".
 *
 * E, C and W are published worked examples, D are constructed from published rules, `cause-` are the right
 * figures of the invented base month, `row-` are reference values on metering, rounding, calendar and use.
 */
export const LISTED_IDS: readonly string[] = [
  ...numbered('E', words('1 2 3 4 6 7 9 10 13 14 15 16 17 18 19 20 21 22 23 24 25 26 27')),
  ...numbered('C', words('1 3 4 5 6 8 9 10')),
  ...numbered('W', words('01 02 03 04 05 07 08 09 13 14 15 18 19 21 22 23 24 25 26 27 28 30')),
  ...numbered('D', words('01 02 04 05 06 09 10 11 12 14 16 17')),
  ...numbered('cause-', words('B0 C02 C09 C21 C26 C27 C28 C30 C31 C35 S3')),
  ...numbered('scenario-', words('1 2')),
  ...numbered('row-', fromTo(89, 168)),
];
