/** A tariff that a household can choose; its text is fetched only when it is chosen. */
export interface TariffChoice {
  readonly id: string;
  readonly name: string;
  readonly load: () => Promise<string>;
}
