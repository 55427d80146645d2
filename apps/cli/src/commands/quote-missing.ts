import { prepareTariff, type Finding, type Tariff } from '@unitbook/engine';
import { commandFinding } from '../findings.ts';
import { unitWords } from '../told/unit-words.ts';

/** What the engine says of a quantity that nobody gave. */
const ABOUT_MISSING: readonly string[] = ['settlement/not-given', 'bill/quantity-unknown'];

/**
 * Say of quantities that a quote does not give where they belong: what the engine says of them is about readings.
 *
 * @param findings  of a quote that could not be billed
 */
export function withMissingNamed(findings: readonly Finding[], tariff: Tariff): readonly Finding[] {
  const { quantities } = prepareTariff(tariff);
  return findings.map((finding) => {
    const name = finding.values['quantity'] ?? '';
    const known = quantities.get(name);
    if (!ABOUT_MISSING.includes(finding.code) || known === undefined) return finding;
    const option = `"${name}" under "quantities"`;
    const values = { name, label: known.label, option, unit: unitWords(known.unit) };
    return commandFinding('command/quantity-missing', { path: ['quantities'] }, values);
  });
}
