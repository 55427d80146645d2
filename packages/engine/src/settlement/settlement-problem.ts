import type { SettlementFindingCode } from './findings.ts';

/** What stops a period from being settled: a finding in the making. */
export class SettlementProblem extends Error {
  readonly code: SettlementFindingCode;
  readonly values: Readonly<Record<string, string>>;
  constructor(code: SettlementFindingCode, values: Readonly<Record<string, string>>) {
    super(code);
    this.code = code;
    this.values = values;
  }
}
