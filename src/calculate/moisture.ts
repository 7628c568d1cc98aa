import { EMC_POLYNOMIALS } from '../trade/moisture.ts';
import type { Shop } from '../trade/shop.ts';
import type { FactWorking } from './door-set.ts';
import { constant, difference, fact, input, product, quotient, square, sum } from './formula.ts';
import type { Worked } from './worked.ts';

/** Percent of moisture in the wood: when it is machined, and in the driest and the wettest weeks of the house. */
export type Moistures = {
  readonly made: FactWorking;
  readonly driest: FactWorking;
  readonly wettest: FactWorking;
};

/** From what was measured where the workbook says it; else from temperature and humidity. */
export function moistures({ climate }: Shop): Moistures {
  const { temperatureC } = climate;
  return {
    made:
      climate.shopHumidity === undefined
        ? measured('moisture-made', climate.shopMoisture)
        : equilibriumMoisture('moisture-made', { temperatureC, humidity: climate.shopHumidity }),
    driest:
      climate.driestMoisture === undefined
        ? equilibriumMoisture('moisture-driest', { temperatureC, humidity: climate.driestHumidity })
        : measured('moisture-driest', climate.driestMoisture),
    wettest:
      climate.wettestMoisture === undefined
        ? equilibriumMoisture('moisture-wettest', { temperatureC, humidity: climate.wettestHumidity })
        : measured('moisture-wettest', climate.wettestMoisture),
  };
}

const measured = (of: Worked, percent: number): FactWorking =>
  fact({ of, unit: '%', formula: MEASURED }, { M: percent });

const MEASURED = input('M', '%');

/**
 * The moisture content, in percent, that wood settles to at a temperature and a relative humidity in percent.
 * USDA Forest Products Laboratory, Wood Handbook (FPL-GTR-190, 2010), eq. 4–5.
 */
export const equilibriumMoisture = (
  of: Worked,
  air: { readonly temperatureC: number; readonly humidity: number },
): FactWorking =>
  fact({ of, unit: '%', formula: EQUILIBRIUM }, { ...constantsAt(air.temperatureC), h: air.humidity / 100 });

const EQUILIBRIUM = equilibrium();

function equilibrium() {
  const [W, K, K1, K2] = [input('W', 'ratio'), input('K', 'ratio'), input('K1', 'ratio'), input('K2', 'ratio')];
  const h = input('h', 'ratio');
  const once = product(K1, K, h);
  const twice = product(K1, K2, square(K), square(h));
  const bracket = sum(
    quotient(product(K, h), difference(constant(1), product(K, h))),
    quotient(sum(once, product(constant(2), twice)), sum(constant(1), once, twice)),
  );
  const moisture = product(quotient(constant(1800), W), bracket);
  // The constants are those of a temperature, which the formula does not name.
  return { ...moisture, inputs: [...input('θ', '°C').inputs, ...moisture.inputs] };
}

const constantsAt = (temperatureC: number) => ({
  θ: temperatureC,
  W: constantAt('W', temperatureC),
  K: constantAt('K', temperatureC),
  K1: constantAt('K1', temperatureC),
  K2: constantAt('K2', temperatureC),
});

function constantAt(symbol: keyof typeof EMC_POLYNOMIALS, temperatureC: number): number {
  const [fixed, linear, quadratic] = EMC_POLYNOMIALS[symbol];
  return fixed + linear * temperatureC + quadratic * temperatureC * temperatureC;
}
