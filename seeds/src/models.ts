import type { Chance } from './random';

type Design = { readonly [attribute: string]: string };

/** The demonstration plant's invented models. Attributes and details are those of its rulebook. */
type Model = {
  readonly name: string;
  readonly sections: 1 | 2 | 3;
  readonly share: number;
  readonly design: Design;
};

const COMMON: Design = {
  roof_load: 'South',
  duct: 'floor',
  uplift: 'straps',
  sheathing: 'no',
  sheathing_path: 'tested',
  roofing: 'shingle',
  attic_vent: 'natural',
  wall_retarder: 'inside-low',
  pan: 'one-piece',
  dwv_test: 'water',
  dielectric: 'A',
  gas_tubing: 'steel',
  mated_in_plant: 'no',
  hinged_roof: 'no',
  site_completion: 'no',
  wall_board: 'on-line',
  axles: '3',
  braked_axles: '2',
  joists: '2x6 at 16 in',
  floor_r: 'R-22',
  attic_r: 'R-33',
  truss: 'T-100',
  roof_strap_nails: '5',
  shingle_nails: '6',
  sheathing_schedule: 'S-1',
  alarms: '3',
  floor_lags: 'L-2',
};

const MODELS: readonly Model[] = [
  {
    name: 'Alder 16',
    sections: 1,
    share: 18,
    design: { stud: '2x4', thermal: '1', fuel: 'none', gasket: 'plant' },
  },
  {
    name: 'Birch 18',
    sections: 1,
    share: 17,
    design: { stud: '2x6', thermal: '2', fuel: 'natural', gasket: 'plant' },
  },
  {
    name: 'Cedar 28',
    sections: 2,
    share: 26,
    design: { stud: '2x6', thermal: '2', fuel: 'natural', gasket: 'plant' },
  },
  {
    name: 'Dogwood 32',
    sections: 2,
    share: 22,
    design: {
      stud: '2x6',
      thermal: '3',
      fuel: 'lp',
      roof_load: 'North',
      pan: 'site-built',
      gasket: 'plant',
      attic_r: 'R-38',
    },
  },
  {
    name: 'Elm 24',
    sections: 2,
    share: 13,
    design: { stud: '2x4', thermal: '1', fuel: 'none', gasket: 'plant' },
  },
  {
    name: 'Fir 40',
    sections: 3,
    share: 4,
    design: { stud: '2x6', thermal: '3', fuel: 'natural', gasket: 'plant' },
  },
];

/** Homes for windy places get sheathing under their straps; the schedule is the approved design's. */
const WINDY: Design = { wind: 'II', sheathing: 'yes' };

/** A dry half has no bath, so no shower pan to build or to test. */
const DRY: Design = { role: 'dry', pan: 'none' };

export type HomeOrder = {
  readonly home: string;
  readonly model: string;
  readonly design: Design;
  readonly sections: readonly { readonly serial: string; readonly design: Design }[];
  readonly destination: string;
};

const LETTERS = ['A', 'B', 'C'] as const;
/** Invented places: no county of this name is meant. */
const DESTINATIONS = [
  'Northfork',
  'Millbrook',
  'Elk Flats',
  'Stonebridge',
  'Lower Lake',
  'Cold Creek',
] as const;

const pickModel = (chance: Chance): Model => {
  let left = chance.next() * MODELS.reduce((sum, { share }) => sum + share, 0);
  for (const model of MODELS) {
    left -= model.share;
    if (left < 0) return model;
  }
  return chance.pick(MODELS);
};

export const orderHome = (number: number, year: string, chance: Chance): HomeOrder => {
  const model = pickModel(chance);
  const home = `H${year}-${String(1_001 + number)}`;
  const wind: Design = chance.yes(0.12) ? WINDY : { wind: 'I' };

  return {
    home,
    model: model.name,
    design: { ...COMMON, ...model.design, ...wind, sections: String(model.sections) },
    sections: LETTERS.slice(0, model.sections).map((letter, index) => ({
      serial: `${home}-${letter}`,
      design: index === 0 ? { role: 'wet' } : DRY,
    })),
    destination: chance.pick(DESTINATIONS),
  };
};
