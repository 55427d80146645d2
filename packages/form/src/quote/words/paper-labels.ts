/** Heads of the printed quote, one for each thing that a quote has to say. */
export interface PaperHeads {
  readonly who: string;
  readonly inputs: string;
  readonly system: string;
  readonly generation: string;
  readonly ownUse: string;
  readonly months: string;
  readonly stays: string;
  readonly surplus: string;
  readonly costs: string;
  readonly loan: string;
  readonly assumptions: string;
  readonly years: string;
  readonly sensitivity: string;
  readonly warnings: string;
  readonly promise: string;
  readonly signature: string;
}

/** Short words beside figures. */
export interface PaperLabels {
  readonly date: string;
  readonly validUntil: string;
  readonly customer: string;
  readonly site: string;
  readonly seller: string;
  readonly licence: string;
  readonly installer: string;
  readonly start: string;
  readonly tariff: string;
  readonly usedInAYear: string;
  /** The order that the charges are from. */
  readonly charges: string;
  /** The order that the settlement of units is from. */
  readonly settlement: string;
  readonly arrangement: string;
  /** The days of the year on which surplus is settled. */
  readonly settled: string;
  readonly surplusRate: string;
  readonly surplusPaid: string;
  readonly lapsed: string;
  readonly source: string;
  /** The unit of a plant's size, such as "kWp". */
  readonly peak: string;
  readonly modules: string;
  readonly inverter: string;
  readonly layout: string;
  readonly shading: string;
  readonly madeInAYear: string;
  readonly lowCase: string;
  readonly reason: string;
  readonly price: string;
  readonly tax: string;
  readonly subsidy: string;
  readonly battery: string;
  readonly cashOnDayOne: string;
  readonly upkeep: string;
  readonly cleaning: string;
  readonly insurance: string;
  readonly cashPrice: string;
  readonly withLoan: string;
  /** What a month of the first year saves, after upkeep. */
  readonly netMonth: string;
  readonly leftMonth: string;
  readonly contact: string;
  readonly borrowed: string;
  readonly rate: string;
  readonly instalment: string;
  readonly interest: string;
  readonly fees: string;
  readonly payback: string;
  readonly discounted: string;
  readonly saving: string;
  readonly smallestBill: string;
  readonly carbon: string;
  readonly place: string;
  readonly forCustomer: string;
  readonly forSeller: string;
}
