/** Example tariffs that cannot be billed from readings or units of a two-way meter, and what they need besides. */
export const LEFT_OUT: Readonly<Record<string, string>> = {
  'belgium/wallonia-prosumer': 'inverter-capacity and grid-mode are facts of the plant',
  'brazil/enertrend-unit-compensation': 'phases are a fact of the connection',
  'germany/rheinnetz-feed-in-advances': 'advances-paid is money; fed-high and fed-low are of other registers',
  'india/delhi-kvah-2014': 'import-kvah is of a kVAh register',
  'india/gujarat-high-voltage-2021': 'import-left and export-left are what intervals leave',
  'india/pspcl-kvah': 'import-kvah and export-kvah are of kVAh registers',
  'malaysia/tnb-solar-atap': 'allowable-export is a limit of the agreement',
  'spain/onerz-simplified-compensation': 'hourly-import and hourly-export are of hours',
  'sri-lanka/ceb-net-accounting': 'contract-year is a fact of the agreement',
  'tarumira/taresco-connection-changed': 'phases are a fact of the connection',
  'tarumira/taresco-demand-above-load': 'maximum-demand is of a demand register',
  'tarumira/taresco-kvah-power-factor': 'import-kvah is of a kVAh register',
  'tarumira/taresco-load-changed': 'category is a fact of the connection',
  'tarumira/taresco-meter-replaced':
    'import-old-meter, import-new-meter, export-old-meter and export-new-meter are told apart by its rule',
  'tarumira/taresco-netting-by-hour': 'net-import and net-export are of hours',
  'tarumira/taresco-netting-day-hours': 'net-import and net-export are of hours',
  'united-arab-emirates/dewa-electricity-water': 'water-gallons are of a water meter',
  'usa/national-grid-ma-market-net-metering': 'credited-share is a fact of the agreement',
  'usa/pge-nem2-nonbypassable': 'interval-import is of intervals',
  'usa/sce-baseline-credit': 'baseline-allocation is of the climate zone',
};
