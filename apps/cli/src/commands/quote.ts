import {
  checkFlyer,
  compareTariffs,
  minorUnitDigits,
  quoteResultDocument,
  quoteTables,
  type FlyerLine,
  type QuoteResult,
  type Tariff,
  type TariffResult,
} from '@unitbook/engine';
import { about, type PlacedFinding } from '../findings.ts';
import { QUOTE_HELP } from '../help.ts';
import type { CommandIo } from '../io.ts';
import { documentNotation, localeFindings } from '../locale.ts';
import { csvText } from '../render/csv.ts';
import { inNotation } from '../render/in-notation.ts';
import type { PageNotation } from '../render/notation.ts';
import { quotePage } from '../render/quote-page.ts';
import { finish, type Command, type TypedCommand } from './command.ts';
import { readQuoteInput, type ReadQuoteInput } from './quote-input.ts';
import { checkQuoteOptions, drawCount, idleQuoteOptions, TABLES } from './quote-options.ts';
import { workOut } from './quote-work.ts';

const SUBJECT = 'unitbook quote';

/** Everything that can be printed of a quote. */
interface Answer {
  readonly result: QuoteResult;
  readonly tariff: Tariff;
  /** The quote under other tariffs. */
  readonly others: readonly TariffResult[];
  /** The claims of a flyer; null: there is none. */
  readonly flyer: readonly FlyerLine[] | null;
}

interface FoundAnswer {
  readonly value: Answer | null;
  readonly findings: readonly PlacedFinding[];
}

/** Work everything out; what is doubtful is told of the quote, and of the flyer. */
function answerOf(read: ReadQuoteInput, typed: TypedCommand): FoundAnswer {
  const { input, tariff, others, flyer, profile, inQuote, inFlyer } = read;
  const idle = about(SUBJECT, idleQuoteOptions(typed, input.document));
  if (idle.length > 0) return { value: null, findings: idle };
  const { value, findings } = workOut(input, tariff, { draws: drawCount(typed), profile });
  if (value === null) return { value, findings: inQuote(findings) };
  const { result, facts } = value;
  const checked = flyer === null ? null : checkFlyer(flyer, result.quote, facts);
  return {
    value: {
      result,
      tariff,
      flyer: checked?.lines ?? null,
      others: compareTariffs(input, others, { profile, currency: tariff.document.currency }),
    },
    findings: [...inQuote(findings), ...inFlyer(checked?.findings ?? [])],
  };
}

/** What was asked for: a table, everything as JSON, or the page. */
function printed(
  { result, tariff: { document }, flyer, others }: Answer,
  { values, switches }: TypedCommand,
  { notation, findings }: { readonly notation: PageNotation; readonly findings: readonly PlacedFinding[] },
): string {
  const table = TABLES.find((name) => name === values.get('csv'));
  if (table !== undefined)
    return csvText(quoteTables(result, minorUnitDigits(document.currency) ?? 2)[table]);
  if (switches.has('json')) {
    const told = { tariff: document.id, flyer, others, findings: findings.map(({ finding }) => finding) };
    return `${JSON.stringify(quoteResultDocument(result, told), null, 2)}\n`;
  }
  const withSizes = switches.has('sizes');
  return `${quotePage({ result, tariff: document, flyer, others, withSizes }, notation).join('\n')}\n`;
}

async function runQuote(typed: TypedCommand, io: CommandIo): Promise<number> {
  const locale = typed.values.get('locale');
  const problems = [...about(SUBJECT, checkQuoteOptions(typed)), ...localeFindings(locale, SUBJECT)];
  if (problems.length > 0) return finish(io, { ran: false, findings: problems });
  const { value: read, findings: ofFiles } = await readQuoteInput(typed, io);
  if (read === null) return finish(io, { ran: false, findings: ofFiles });
  const own = { locale: read.input.document.locale, where: 'the quote', subject: read.subject };
  const { notation, findings: ofLocale } = documentNotation(locale, own, read.tariff.document.currency);
  const answer = answerOf(read, typed);
  const findings = [...ofFiles, ...ofLocale, ...answer.findings];
  const told = inNotation(findings, notation);
  if (answer.value === null) return finish(io, { ran: false, findings: told });
  // Whoever quotes reads what is doubtful before what is promised.
  const status = finish(io, { ran: true, findings: told });
  io.out(printed(answer.value, typed, { notation, findings }));
  return status;
}

/** `unitbook quote`: what a plant that is not built yet would save, cost and come to. */
export const quoteCommand: Command = {
  name: 'quote',
  help: QUOTE_HELP,
  options: {
    quote: 'FILE',
    tariff: 'FILE',
    against: 'FILE',
    flyer: 'FILE',
    profile: 'FILE',
    columns: 'FILE',
    zone: 'ZONE',
    draws: 'N',
    sizes: null,
    json: null,
    csv: 'TABLE',
    locale: 'TAG',
  },
  repeated: ['against'],
  run: runQuote,
};
