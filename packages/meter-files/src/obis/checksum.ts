/** CRC-16/ARC of each byte: polynomial x^16 + x^15 + x^2 + 1, lowest bit first (0xA001). */
const TABLE: Uint16Array = Uint16Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit += 1) rest = (rest & 1) === 1 ? (rest >>> 1) ^ 0xa001 : rest >>> 1;
  return rest;
});

const isAscii = (text: string): boolean => !/[^\0-\x7f]/.test(text);

/** A byte stands for each character of ASCII; a telegram has no others unless it was damaged. */
function bytesOf(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

/**
 * The checksum of a meter telegram: CRC-16/ARC (0xA001 reflected, from 0), as the open Dutch smart-meter
 * requirements print it behind the mark "!".
 *
 * @param text  all of it is counted: for a telegram, what stands from "/" to "!", both with it, line ends too
 * @returns     four hexadecimal digits
 * @example
 * crc16('123456789') //=> "BB3D"
 */
export function crc16(text: string): string {
  let rest = 0;
  const add = (byte: number): void => {
    rest = (rest >>> 8) ^ (TABLE[(rest ^ byte) & 0xff] ?? 0);
  };
  if (isAscii(text)) for (let at = 0; at < text.length; at += 1) add(text.charCodeAt(at));
  else bytesOf(text).forEach(add);
  return rest.toString(16).toUpperCase().padStart(4, '0');
}
