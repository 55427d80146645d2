export { countUnits, type UnitsRule } from './count-units.ts';
export { ENERGY_FINDINGS, energyFinding, type EnergyFindingCode } from './findings.ts';
export { energyRatios, measureEnergy, type EnergyPeriod, type EnergyRatios } from './measure-energy.ts';
