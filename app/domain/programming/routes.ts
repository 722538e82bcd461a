// Which route to offer for a step, from what worked in this shop before. A route that failed for this step is never offered first again.
import { plural } from '../shared/text.ts';
import type { ProgrammingRoute } from './programming-route.ts';
import type { RouteTally } from './route-history.ts';

export type RankedRoute = {
  readonly route: ProgrammingRoute;
  readonly worked: number;
  /** Worked and failed together. An attempt that a person stopped says nothing about the route and is not counted. */
  readonly tried: number;
  /** Estimated chance that it works, 0 to 1; null when there is no history. */
  readonly mean: number | null;
  /** True when it already failed for this very step. */
  readonly failedHere: boolean;
  readonly sentence: string;
};

const routeNames: Readonly<Record<ProgrammingRoute, string>> = {
  'on-vehicle': 'On the vehicle with an independent tool',
  bench: 'On the bench',
  'pass-through': 'Maker’s software through a pass-through device',
  'sent-out': 'Sent out',
  'by-hand': 'By hand',
};

/**
 * Mean of the beta distribution after `worked` of `tried` attempts, starting from Beta(1, 1), which takes every chance as equally likely:
 * (worked + 1) / (tried + 2), Laplace's rule of succession. One success in one try is 0.67, not 1.
 */
export function betaBinomialMean(worked: number, tried: number): number {
  return (worked + 1) / (tried + 2);
}

function rankOne(history: readonly RouteTally[], route: ProgrammingRoute): RankedRoute {
  const tally = history.find((one) => one.route === route);
  const worked = tally?.worked ?? 0;
  const tried = tally?.tried ?? 0;
  if (tried === 0)
    return {
      route,
      worked,
      tried,
      mean: null,
      failedHere: false,
      sentence: `${routeNames[route]}: no history in this shop.`,
    };
  const mean = betaBinomialMean(worked, tried);
  const sentence =
    `${routeNames[route]}: worked in ${worked} of ${plural(tried, 'try', 'tries')} on this kind of module; ` +
    `estimate ${Math.round(mean * 100)} % (before any case: 50 %).`;
  return { route, worked, tried, mean, failedHere: false, sentence };
}

/**
 * The routes, the most promising first by the Beta-binomial mean with the prior Beta(1, 1). One without history ranks by the prior's own
 * mean, 0.5, and says so; equals keep the order given.
 */
export function rankRoutes(
  history: readonly RouteTally[],
  routesLeft: readonly ProgrammingRoute[],
): readonly RankedRoute[] {
  return routesLeft.map((route) => rankOne(history, route)).sort((a, b) => (b.mean ?? 0.5) - (a.mean ?? 0.5));
}

export type RouteOffer = {
  /** Routes not yet failed for this step come first, ranked; then those that failed, ranked as well. */
  readonly routes: readonly RankedRoute[];
  readonly sentence: string;
};

/** What to offer for a step, given the routes that already failed for it. `history` is the shop's for this kind of module. */
export function offerRoutes(
  step: { readonly routes: readonly ProgrammingRoute[] },
  failedHere: readonly ProgrammingRoute[],
  history: readonly RouteTally[],
): RouteOffer {
  const left = rankRoutes(
    history,
    step.routes.filter((route) => !failedHere.includes(route)),
  );
  const failed = rankRoutes(
    history,
    step.routes.filter((route) => failedHere.includes(route)),
  ).map((one) => ({ ...one, failedHere: true, sentence: `${one.sentence} It has already failed for this step.` }));
  const [first] = left;
  const hasHistory = left.some(({ mean }) => mean !== null);
  const sentence = !first
    ? 'Every route has failed for this step. Find out why before one is tried again, or send it out.'
    : hasHistory
      ? `Next: ${first.sentence}`
      : `${failed.length > 0 ? 'Go on to the next route instead of repeating the one that failed. ' : ''}This shop has no history for this kind of module on ${left.length === 1 ? 'the route that is left' : 'these routes'}.`;
  return { routes: [...left, ...failed], sentence };
}
