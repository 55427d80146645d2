/**
 * Bills in binary floating point, written by hand for one tariff each: the ceiling that exact bills are
 * measured against. They are wrong in some bills, which is the point.
 */

const toPaisa = (amount: number): number => Math.round(amount * 100) / 100;

/** The plain tariff: units and kW in, rounded payable out. */
export function floatPlainBill(units: number, load: number, lines: Float64Array): number {
  const energy = toPaisa(
    units <= 50
      ? units * 2.7
      : units <= 100
        ? 135 + (units - 50) * 3.645
        : units <= 200
          ? 317.25 + (units - 100) * 5.1275
          : units <= 300
            ? 830 + (units - 200) * 6.305
            : 1460.5 + (units - 300) * 7.4825,
  );
  const fixed = toPaisa(load * (load <= 2 ? 40 : load <= 5 ? 75.5 : 110.25));
  const fuel = toPaisa(units * 0.4875);
  const surchargeA = toPaisa((energy + fixed) * 0.0425);
  const surchargeB = toPaisa(energy * 0.027);
  const duty = toPaisa((energy + fixed + fuel + surchargeA + surchargeB) * 0.15);
  lines[0] = energy;
  lines[1] = fixed;
  lines[2] = fuel;
  lines[3] = surchargeA;
  lines[4] = surchargeB;
  lines[5] = duty;
  return Math.round(energy + fixed + fuel + surchargeA + surchargeB + duty);
}

/** The demo tariff for a month of 27 to 33 days: units and kW in, rounded payable out. */
export function floatDemoBill(units: number, load: number, lines: Float64Array): number {
  const fixed = toPaisa(load * 60);
  const energy = toPaisa(
    units <= 50
      ? units * 3
      : units <= 150
        ? 150 + (units - 50) * 4.8
        : units <= 300
          ? 630 + (units - 150) * 6.5
          : 1605 + (units - 300) * 8,
  );
  const minimum = toPaisa(Math.max(0, 150 - fixed - energy));
  const fuel = toPaisa(units * 0.4);
  const tax = toPaisa(energy * 0.06);
  const subsidy = -toPaisa(Math.min(units, 50) * 1.5);
  lines[0] = fixed;
  lines[1] = energy;
  lines[2] = minimum;
  lines[3] = fuel;
  lines[4] = tax;
  lines[5] = subsidy;
  return Math.round(fixed + energy + minimum + fuel + tax + subsidy);
}
