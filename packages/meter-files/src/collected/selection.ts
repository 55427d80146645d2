import { INTERVAL_CHANNELS, type Finding, type IntervalChannel } from '@unitbook/engine';
import type { Stream } from '../stream.ts';
import { collectedFinding } from './collected-findings.ts';
import { streamText } from './texts.ts';

/** What a stream is to be counted as; null to leave it out. */
export type Assign = (stream: Stream) => IntervalChannel | null;

/** A stream and what it is counted as. */
export interface Assigned {
  readonly stream: Stream;
  readonly channel: IntervalChannel;
}

/** The streams that are counted, and what is to be said of the others. */
export interface Selection {
  readonly chosen: readonly Assigned[];
  readonly findings: readonly Finding[];
}

const names = (streams: readonly Stream[]): string => streams.map(streamText).join('; ');

/** A total and its rates: the rates are in the total already. */
function withoutRates(assigned: readonly Assigned[]): Selection {
  const isTotalOf = (total: Assigned, one: Assigned): boolean =>
    total.stream.rate === null &&
    total.channel === one.channel &&
    total.stream.point === one.stream.point &&
    total.stream.meter === one.stream.meter;
  const isRate = (one: Assigned): boolean =>
    one.stream.rate !== null && assigned.some((other) => isTotalOf(other, one));
  const rates = assigned.filter(isRate);
  if (rates.length === 0) return { chosen: assigned, findings: [] };
  const values = { registers: names(rates.map(({ stream }) => stream)) };
  const note = collectedFinding('meter-file/rates-in-total', { path: [] }, values);
  return { chosen: assigned.filter((one) => !rates.includes(one)), findings: [note] };
}

/** What streams are counted as by their own words. */
function byQuantity(streams: readonly Stream[]): Selection {
  const findings: Finding[] = [];
  const chosen = streams.flatMap((stream) => {
    const channel = INTERVAL_CHANNELS.find((one) => one === stream.quantity);
    return channel === undefined ? [] : [{ stream, channel }];
  });
  const net = streams.filter(({ quantity }) => quantity === 'net');
  if (net.length > 0)
    findings.push(collectedFinding('meter-file/net', { path: [] }, { registers: names(net) }));
  const other = streams.filter(({ quantity }) => quantity === 'other');
  if (other.length > 0)
    findings.push(collectedFinding('meter-file/other-registers', { path: [] }, { registers: names(other) }));
  const points = [...new Set(chosen.map(({ stream }) => stream.point))];
  if (points.length > 1) {
    const values = { count: String(points.length), points: points.join('; ') };
    findings.push(collectedFinding('meter-file/several-points', { path: [] }, values));
  }
  return { chosen, findings };
}

/**
 * Which streams are counted, and as what.
 *
 * Without `assign` it goes by what each stream counts by its own words: net energy is an error, because it
 * cannot be split, and so are several points, because they are several connections; what is no active
 * energy is left out. With `assign`, what it says is done. Rates are left out where their total is there.
 *
 * @param streams  of a file, each once
 * @param assign   what each is to be counted as
 */
export function selectStreams(streams: readonly Stream[], assign?: Assign): Selection {
  const { chosen, findings } =
    assign === undefined
      ? byQuantity(streams)
      : {
          chosen: streams.flatMap((stream) => {
            const channel = assign(stream);
            return channel === null ? [] : [{ stream, channel }];
          }),
          findings: [],
        };
  const total = withoutRates(chosen);
  return { chosen: total.chosen, findings: [...findings, ...total.findings] };
}
