/** A job to plan, all of them our own. */
export interface ShopJob {
  readonly name: string;
  readonly document: object;
}

const ELECTRODES = ['5/16 in', '3/8 in', '1/2 in', '5/8 in'].map((diameter) => ({
  diameter,
  count: 200,
  price_each: 3,
}));

interface Asked {
  readonly seam?: object;
  readonly plate?: object;
  readonly groove?: object;
}

function shopJob(
  name: string,
  [wanted, plus, minus]: readonly [string, string, string],
  length: string | undefined,
  asked: Asked = {},
): ShopJob {
  return {
    name,
    document: {
      furrow: 1,
      title: name,
      seam: { ...(length !== undefined && { length }), ...asked.seam },
      plate: { thickness: '40 mm', ...asked.plate },
      groove: {
        depth: { wanted, plus, minus },
        width: { least: '8 mm', most: '24 mm' },
        ligament_least: '3 mm',
        ...asked.groove,
      },
      kit: {
        electrodes: ELECTRODES,
        current: { least: '200 A', most: '1200 A' },
        travel: { least: '6 in/min', most: '100 in/min' },
      },
      rates: { currency: 'EUR', labour_per_hour: 68, power_per_kWh: 0.24 },
    },
  };
}

/** What a supervisor is asked for in a week: seventeen ordinary jobs. */
export const SHOP_JOBS: readonly ShopJob[] = [
  shopJob('back-gouge 3/8 +-1/8 in, 10 ft', ['3/8 in', '1/8 in', '1/8 in'], '10 ft'),
  shopJob('back-gouge 1/4 +-1/16 in, 10 ft', ['1/4 in', '1/16 in', '1/16 in'], '10 ft'),
  shopJob('back-gouge 1/4 +-1/8 in, 10 ft', ['1/4 in', '1/8 in', '1/8 in'], '10 ft'),
  shopJob('back-gouge 3/8 +1/8 -0 in, 10 ft', ['3/8 in', '1/8 in', '0 in'], '10 ft'),
  shopJob('back-gouge 3/8 +-1/16 in, 10 ft', ['3/8 in', '1/16 in', '1/16 in'], '10 ft'),
  shopJob('back-gouge 1/2 +-1/8 in, 20 ft', ['1/2 in', '1/8 in', '1/8 in'], '20 ft'),
  shopJob('weld removal 3/8 +1/4 -0 in, 6 ft', ['3/8 in', '1/4 in', '0 in'], '6 ft'),
  shopJob('pocket 3/4 +1/4 -0 in, 8 in', ['3/4 in', '1/4 in', '0 in'], '8 in', {
    plate: { thickness: '50 mm' },
    groove: { shape: 'pocket', width: { least: '10 mm', most: '30 mm' } },
  }),
  shopJob('wash 1/8 +1/8 -0 in, 4 in wide', ['1/8 in', '1/8 in', '0 in'], '24 in', {
    groove: { shape: 'wash', width: { least: '4 in', most: '5 in' }, floor_width: '3.6 in' },
  }),
  shopJob('wash 1/4 +1/4 -1/16 in, 3 in wide', ['1/4 in', '1/4 in', '1/16 in'], '24 in', {
    groove: { shape: 'wash', width: { least: '3 in', most: '4 in' }, floor_width: '2.6 in' },
  }),
  shopJob('U preparation 5/8 +1/8 -1/16 in', ['5/8 in', '1/8 in', '1/16 in'], '10 ft', {
    groove: { width: { least: '10 mm', most: '26 mm' } },
  }),
  shopJob('pipe girth 24 in, 3/16 +1/8 -0 in', ['3/16 in', '1/8 in', '0 in'], undefined, {
    seam: { path: 'girth', diameter: '24 in' },
    plate: { thickness: '12 mm' },
  }),
  shopJob('tank plate 3/16 +-1/16 in, 20 ft', ['3/16 in', '1/16 in', '1/16 in'], '20 ft', {
    plate: { thickness: '12 mm' },
  }),
  shopJob('heavy plate 1 +-3/16 in', ['1 in', '3/16 in', '3/16 in'], '10 ft', {
    plate: { thickness: '80 mm' },
    groove: { width: { least: '12 mm', most: '32 mm' } },
  }),
  shopJob('stainless 1/4 +-1/16 in', ['1/4 in', '1/16 in', '1/16 in'], '10 ft', {
    plate: { material: 'austenitic_stainless' },
  }),
  shopJob('cast iron 1/2 +1/4 -0 in', ['1/2 in', '1/4 in', '0 in'], '3 ft', {
    plate: { material: 'cast_iron' },
  }),
  shopJob('overhead 1/4 +-1/16 in', ['1/4 in', '1/16 in', '1/16 in'], '10 ft', {
    seam: { position: 'overhead' },
  }),
];

interface Small {
  readonly electrodes: readonly string[];
  readonly depth: readonly [wanted: string, plus: string, minus: string];
  readonly length: string;
  readonly trial?: 'scrap' | 'none';
  readonly groove?: object;
  readonly plan?: object;
  readonly gauge?: object;
}

function smallJob(name: string, small: Small): ShopJob {
  const [wanted, plus, minus] = small.depth;
  return {
    name,
    document: {
      furrow: 1,
      title: name,
      seam: { length: small.length },
      plate: { thickness: '40 mm' },
      groove: {
        depth: { wanted, plus, minus },
        width: { least: '8 mm', most: '24 mm' },
        ...small.groove,
      },
      kit: {
        electrodes: small.electrodes.map((diameter) => ({ diameter, count: 50, price_each: 3 })),
        current: { least: '500 A', most: '1100 A' },
        travel: { least: '6 in/min', most: '100 in/min' },
        gauge: { stations_most: 4, ...small.gauge },
        trial: { on: small.trial ?? 'scrap' },
      },
      rates: { currency: 'EUR', labour_per_hour: 68, power_per_kWh: 0.24 },
      plan: { tracks_most: 1, ...small.plan },
    },
  };
}

/** Jobs with few choices, so that every set-up on a fine grid can be run: all four ways come out best in some of them. */
export const SMALL_JOBS: readonly ShopJob[] = [
  smallJob('blind, much room', {
    electrodes: ['1/2 in'],
    depth: ['8 mm', '24 mm', '1 mm'],
    length: '400 mm',
    plan: { gauge_stops: 'never', layers_most: 2 },
  }),
  smallJob('short, two electrodes, by time', {
    electrodes: ['3/8 in', '1/2 in'],
    depth: ['9 mm', '8 mm', '1 mm'],
    length: '300 mm',
    plan: { objective: 'time', layers_most: 2 },
  }),
  smallJob('trial, 1 m', {
    electrodes: ['1/2 in'],
    depth: ['9 mm', '6 mm', '2 mm'],
    length: '1 m',
    plan: { layers_most: 2 },
  }),
  smallJob('trial, two electrodes, 2 m', {
    electrodes: ['3/8 in', '1/2 in'],
    depth: ['9.5 mm', '3.2 mm', '3.2 mm'],
    length: '2 m',
    plan: { layers_most: 2 },
  }),
  smallJob('no scrap, 2 m', {
    electrodes: ['1/2 in'],
    depth: ['9 mm', '6 mm', '2 mm'],
    length: '2 m',
    trial: 'none',
    plan: { layers_most: 2 },
  }),
  smallJob('no scrap, close tolerance', {
    electrodes: ['1/2 in'],
    depth: ['9 mm', '3 mm', '2 mm'],
    length: '500 mm',
    trial: 'none',
    plan: { layers_most: 2 },
  }),
  smallJob('close tolerance, 1 m', {
    electrodes: ['1/2 in'],
    depth: ['9.5 mm', '2.2 mm', '1.6 mm'],
    length: '1 m',
    plan: { layers_most: 2 },
  }),
  smallJob('deep, by time', {
    electrodes: ['1/2 in'],
    depth: ['16 mm', '6 mm', '2 mm'],
    length: '600 mm',
    groove: { width: { least: '10 mm', most: '30 mm' } },
    plan: { objective: 'time', layers_most: 3 },
  }),
  smallJob('wash of two tracks', {
    electrodes: ['1/2 in'],
    depth: ['6 mm', '7 mm', '1 mm'],
    length: '400 mm',
    groove: { shape: 'wash', width: { least: '22 mm', most: '40 mm' }, floor_width: '14 mm' },
    plan: { layers_most: 1, tracks_most: 3 },
    gauge: { stations_most: 3 },
  }),
];
