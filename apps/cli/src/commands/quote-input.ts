import type { FlyerDocument, QuoteInput, QuoteProfile, Tariff } from '@unitbook/engine';
import type { PlacedFinding } from '../findings.ts';
import type { CommandIo } from '../io.ts';
import { readFlyerFile } from '../read/flyer-file.ts';
import type { Placed } from '../read/placed.ts';
import { fileName } from '../read/read-bytes.ts';
import { readProfileFile, type ReadProfileFile } from '../read/profile-file.ts';
import { readQuoteFile } from '../read/quote-file.ts';
import { readTariffFile } from '../read/tariff-file.ts';
import type { TypedCommand } from './command.ts';

/** What `unitbook quote` works with. */
export interface ReadQuoteInput {
  readonly input: QuoteInput;
  readonly tariff: Tariff;
  /** Other tariffs that the customer could choose. */
  readonly others: readonly Tariff[];
  readonly flyer: FlyerDocument | null;
  /** Intervals of use and generation; null: none were given. */
  readonly profile: QuoteProfile | null;
  /** The file of the quote, as messages name it. */
  readonly subject: string;
  /** Findings of later stages, at their places in the quote and in the flyer. */
  readonly inQuote: Placed<never>['place'];
  readonly inFlyer: Placed<never>['place'];
}

const NO_FLYER: Placed<FlyerDocument> = { value: null, place: () => [], findings: [] };

/** Other tariffs; null where one of them cannot be read. */
async function readTariffs(
  io: CommandIo,
  paths: readonly string[],
): Promise<{ readonly value: readonly Tariff[] | null; readonly findings: readonly PlacedFinding[] }> {
  const tariffs: Tariff[] = [];
  const findings: PlacedFinding[] = [];
  for (const path of paths) {
    const read = await readTariffFile(io, path);
    findings.push(...read.findings);
    if (read.value !== null) tariffs.push(read.value);
  }
  return { value: tariffs.length === paths.length ? tariffs : null, findings };
}

/** The profile, where one was named. */
async function profileIn(values: TypedCommand['values'], io: CommandIo): Promise<ReadProfileFile> {
  const profile = values.get('profile');
  if (profile === undefined) return { value: null, findings: [] };
  return readProfileFile(io, { profile, columns: values.get('columns'), zone: values.get('zone') });
}

/** Read what `unitbook quote` needs: everything that is wrong with all files at once, or the input. */
export async function readQuoteInput(
  { values, lists }: Pick<TypedCommand, 'values' | 'lists'>,
  io: CommandIo,
): Promise<{ readonly value: ReadQuoteInput | null; readonly findings: readonly PlacedFinding[] }> {
  const [path, flyerPath] = [values.get('quote') ?? '', values.get('flyer')];
  const quote = await readQuoteFile(io, path);
  const tariff = await readTariffFile(io, values.get('tariff') ?? '');
  const flyer = flyerPath === undefined ? NO_FLYER : await readFlyerFile(io, flyerPath);
  const others = await readTariffs(io, lists.get('against') ?? []);
  const profile = await profileIn(values, io);
  const findings = [
    ...quote.findings,
    ...tariff.findings,
    ...others.findings,
    ...flyer.findings,
    ...profile.findings,
  ];
  const isFlyerBroken = flyerPath !== undefined && flyer.value === null;
  const isProfileBroken = values.has('profile') && profile.value === null;
  const isBroken = isFlyerBroken || isProfileBroken;
  if (quote.value === null || tariff.value === null || others.value === null || isBroken)
    return { value: null, findings };
  const value = {
    input: quote.value,
    tariff: tariff.value,
    others: others.value,
    flyer: flyer.value,
    profile: profile.value,
    subject: fileName(path),
    inQuote: quote.place,
    inFlyer: flyer.place,
  };
  return { value, findings };
}
