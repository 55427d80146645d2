import type { DayNumber } from '@unitbook/engine';
import { VALUE_QUALITIES, type MeterSink, type Stream } from '../stream.ts';
import type { ChunkBuilder } from './chunks.ts';
import { shiftedText } from './digits.ts';
import { doubtCounter } from './doubts.ts';
import type { Position } from './elements.ts';
import type { EspiFindingCode } from './findings.ts';
import { localMinute, type LocalTimeParameters } from './local-time.ts';
import type { Tell } from './log.ts';
import type { Plan } from './plan.ts';
import type { RawReading } from './reading.ts';
import { timedReading, type BlockClock, type TimedReading } from './timing.ts';

/** What all readings of a feed share. */
export interface TakeContext {
  readonly sink: MeterSink;
  readonly tell: Tell;
  /** Say something once in the whole feed. */
  readonly tellOnce: Tell;
  readonly chunks: ChunkBuilder;
  readonly localTime: () => LocalTimeParameters | null;
}

/** Takes the readings of one MeterReading. */
export interface Taker {
  readonly plan: Plan;
  readonly take: (reading: RawReading, clock: BlockClock) => void;
  /** The feed has ended: tell what could only be counted. */
  readonly end: () => void;
}

/** What is said only once: of one MeterReading, or of the whole feed. */
export function onceOnly(tell: Tell): Tell {
  const told = new Set<EspiFindingCode>();
  return (code, position, values) => {
    if (told.has(code)) return;
    told.add(code);
    tell(code, position, values);
  };
}

/** A stream for each rate. */
function streamsOf(plan: Plan, name: Pick<Stream, 'point' | 'register'>): (tou: number) => Stream {
  const streams = new Map<number, Stream>();
  return (tou) => {
    const before = streams.get(tou);
    if (before !== undefined) return before;
    const { quantity, unit } = plan;
    const rate = tou === 0 ? null : String(tou);
    const stream: Stream = { ...name, meter: '', quantity, rate, unit };
    streams.set(tou, stream);
    return stream;
  };
}

/** Whether a value is one that a register or channel of the plan can have; if not, it is told why. */
function isPossible({ quantity }: Plan, { value, valueAt }: RawReading, tell: Tell): boolean {
  if (value >= 0 || quantity === 'net' || quantity === 'other') return true;
  tell('espi/negative', valueAt, { value: String(value), quantity });
  return false;
}

interface Ready {
  readonly stream: Stream;
  readonly value: number;
  readonly quality: number;
  readonly valueAt: Position;
  readonly time: TimedReading;
}

/** Hand on the energy of an interval. */
function handInterval(plan: Plan, { chunks, tell }: TakeContext, ready: Ready): void {
  const { stream, value, quality, valueAt, time } = ready;
  const places = Math.max(0, -plan.power);
  const factor = 10 ** Math.max(0, plan.power);
  if (Math.abs(value) > Math.floor(Number.MAX_SAFE_INTEGER / factor)) {
    tell('espi/too-large', valueAt, { value: String(value), multiplier: String(plan.multiplier) });
    return;
  }
  const { start, minutes } = time;
  const line = valueAt.line;
  chunks.add({ stream, places, start, minutes, value: value * factor, quality, line });
}

const MINUTES_OF_A_DAY = 1440;

/** Hand on a reading of a register, by local time where the feed has given it. */
function handRegister(plan: Plan, context: TakeContext, ready: Ready): void {
  const { stream, value, quality, valueAt, time } = ready;
  const parameters = context.localTime();
  if (parameters === null) context.tellOnce('espi/no-local-time', valueAt);
  const utc = time.start + time.minutes;
  const local = parameters === null ? utc : localMinute(parameters, utc);
  const day = Math.floor(local / MINUTES_OF_A_DAY);
  context.sink.register({
    stream,
    day: day as DayNumber,
    minute: local - day * MINUTES_OF_A_DAY,
    value: shiftedText(value, plan.power),
    quality: VALUE_QUALITIES[quality] ?? 'estimated',
    line: valueAt.line,
  });
}

/** Take the readings of one MeterReading by its plan. */
export function takerOf(plan: Plan, name: Pick<Stream, 'point' | 'register'>, context: TakeContext): Taker {
  const { tell } = context;
  const tellOnce = onceOnly(tell);
  const streamOf = streamsOf(plan, name);
  const doubts = doubtCounter(name.register);
  const hand = plan.accumulation === 'intervals' ? handInterval : handRegister;
  return {
    plan,
    take: (reading, clock) => {
      const time = timedReading({ reading, plan, clock, tell, tellOnce });
      if (reading.hasTier || plan.hasTier) tellOnce('espi/consumption-tier', reading.at);
      if (time === null || !isPossible(plan, reading, tell)) return;
      const { value, valueAt } = reading;
      const { index: quality, doubts: found } = reading.quality ?? plan.quality;
      doubts.count(found, valueAt);
      const stream = streamOf(Number.isNaN(reading.tou) ? plan.tou : reading.tou);
      hand(plan, context, { stream, value, quality, valueAt, time });
    },
    end: () => {
      doubts.end(tell);
    },
  };
}
