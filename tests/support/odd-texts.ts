/** Texts that nobody writes in a cell by mistake, and some that many do: for readers of any format. */
export const ODD_TEXTS: readonly string[] = [
  ...[
    '',
    ' ',
    '0',
    '-0',
    '-1',
    '+1',
    '1e3',
    '1e400',
    'NaN',
    'Infinity',
    '0x10',
    '.',
    '1.',
    '.5',
    '..',
    '1,5',
  ],
  ...['999999999999999', '1000000000000000', '0.000000000000001', '9'.repeat(400), `0.${'0'.repeat(400)}1`],
  ...['"', '""', '"a', '"a,b"', '\ufeff', '\0', '٣', 'constructor', '__proto__'],
];
