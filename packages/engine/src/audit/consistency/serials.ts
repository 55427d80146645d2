import type { Account } from '../../readings/index.ts';
import type { PrintedBill } from '../printed.ts';

/** The meters of a household. */
export type MeterName = 'grid' | 'generation';

/** The number of a meter as a bill prints it; undefined where it prints none. */
export function serialOf({ document }: PrintedBill, meter: MeterName): string | undefined {
  return document.serials?.[meter];
}

/** The numbers that an account has for a meter, those of meters that were there before among them. */
export function ownSerials(account: Account | null, meter: MeterName): readonly string[] {
  const spans = account?.spans ?? [];
  return spans.flatMap(({ serials }) => serials[meter] ?? []).filter((serial) => serial !== '');
}

/** A number without what is typed now so, now otherwise: spaces, strokes, small letters. */
const plain = (serial: string): string => serial.replace(/[\s./-]/g, '').toUpperCase();

/** Whether two numbers are of the same meter; one that is not known is taken for the same. */
export function sameSerial(one: string | undefined, other: string | undefined): boolean {
  return one === undefined || other === undefined || plain(one) === plain(other);
}
