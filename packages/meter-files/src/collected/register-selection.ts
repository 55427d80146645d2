import { INTERVAL_CHANNELS, type Finding, type IntervalChannel } from '@unitbook/engine';
import { collectedFinding } from './collected-findings.ts';
import type { RegisterSeries } from './register-list.ts';
import type { Assign } from './selection.ts';
import { streamText } from './texts.ts';

/** A register and what it is counted as. */
export interface ChosenRegister extends RegisterSeries {
  readonly channel: IntervalChannel;
}

const names = (registers: readonly RegisterSeries[]): string =>
  registers.map(({ stream }) => streamText(stream)).join('; ');

function byQuantity(registers: readonly RegisterSeries[]): {
  chosen: readonly ChosenRegister[];
  findings: readonly Finding[];
} {
  const ofQuantity = (quantity: string): readonly RegisterSeries[] =>
    registers.filter(({ stream }) => stream.quantity === quantity);
  const chosen = registers.flatMap((register) => {
    const channel = INTERVAL_CHANNELS.find((one) => one === register.stream.quantity);
    return channel === undefined ? [] : [{ ...register, channel }];
  });
  const told = [
    ['meter-file/net', ofQuantity('net')],
    ['meter-file/other-registers', ofQuantity('other')],
  ] as const;
  const findings = told
    .filter(([, some]) => some.length > 0)
    .map(([code, some]) => collectedFinding(code, { path: [] }, { registers: names(some) }));
  return { chosen, findings };
}

/** Registers of one quantity and one rate: of several nothing tells which a row is to have. */
function withoutRivals(chosen: readonly ChosenRegister[]): {
  chosen: readonly ChosenRegister[];
  findings: readonly Finding[];
} {
  const slots = new Map<string, ChosenRegister[]>();
  for (const one of chosen) {
    const key = JSON.stringify([one.channel, one.stream.rate]);
    slots.set(key, [...(slots.get(key) ?? []), one]);
  }
  const groups = [...slots.values()];
  const findings = groups
    .filter((group) => group.length > 1)
    .map((group) => {
      const [{ channel, stream }] = group as [ChosenRegister];
      const what = stream.rate === null ? channel : `${channel}, rate ${stream.rate}`;
      const values = { count: String(group.length), what, registers: names(group) };
      return collectedFinding('meter-file/several-registers', { path: [] }, values);
    });
  return { chosen: groups.flatMap((group) => (group.length === 1 ? group : [])), findings };
}

/**
 * Which registers a row of readings has, and as what. Two of one quantity and rate are an error, and
 * neither is taken: readings of several counters cannot stand in one place.
 *
 * @param registers  of a file
 * @param assign     what each is to be counted as; left out: what its own words say
 */
export function selectRegisters(
  registers: readonly RegisterSeries[],
  assign?: Assign,
): { readonly chosen: readonly ChosenRegister[]; readonly findings: readonly Finding[] } {
  const read = registers.filter(({ readings }) => readings.length > 0);
  const { chosen, findings } =
    assign === undefined
      ? byQuantity(read)
      : {
          chosen: read.flatMap((register) => {
            const channel = assign(register.stream);
            return channel === null ? [] : [{ ...register, channel }];
          }),
          findings: [],
        };
  const single = withoutRivals(chosen);
  const all = [...findings, ...single.findings];
  if (chosen.length === 0) all.push(collectedFinding('meter-file/no-registers', { path: [] }));
  return { chosen: single.chosen, findings: all };
}
