import { isFields } from '../../household/shape.ts';
import type { Keep } from '../../keep.ts';
import { readCheckFile } from '../document/check-file.ts';
import { CHECK_FORMAT, type TypedCheck } from '../document/typed-check.ts';
import { emptyHousehold } from '../../household/household.ts';

/** A check as it is kept: in the form of its file, all texts as typed; without a ground it is the book's. */
function keptText({ ground, bills, connected, isOpeningKnown }: TypedCheck): string {
  return JSON.stringify({
    isOfBook: ground === null,
    file: {
      format: CHECK_FORMAT,
      ...(ground ?? { tariff: '', account: emptyHousehold('en-IN').account, readings: [] }),
      connected,
      ...(isOpeningKnown ? {} : { opening: 'unknown' }),
      bills: bills.map(({ bill }) => bill),
    },
  });
}

function opened(text: string): TypedCheck | null {
  try {
    const kept: unknown = JSON.parse(text);
    if (!isFields(kept)) return null;
    const file = readCheckFile(JSON.stringify(kept['file']));
    if (file.kind !== 'check') return null;
    return kept['isOfBook'] === true ? { ...file.check, ground: null } : file.check;
  } catch {
    return null;
  }
}

/** The check that is kept in the browser; null: none that can be opened. One that cannot is put aside, untouched. */
export function loadCheck(keep: Keep | null): TypedCheck | null {
  const text = keep?.load('check') ?? null;
  if (text === null) return null;
  const check = opened(text);
  if (check === null) keep?.setAside(text);
  return check;
}

/** Keep a check in the browser. @returns whether it was kept */
export function saveCheck(keep: Keep | null, check: TypedCheck): boolean {
  return keep?.save('check', keptText(check)) ?? false;
}
