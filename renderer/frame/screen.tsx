// The screen of the route. The only place that knows them all.
import { LotScreen } from '../screens/lot/lot-screen.tsx';
import { SetupScreen } from '../screens/setup/setup-screen.tsx';
import type { Route } from '../state/route-store.ts';

export function Screen({ route }: { readonly route: Route }) {
  return route.screen === 'setup' ? <SetupScreen /> : <LotScreen />;
}
