// The screen of the route. The only place that knows them all.
import { ImportListScreen } from '../screens/import-list/import-list-screen.tsx';
import { LotScreen } from '../screens/lot/lot-screen.tsx';
import { MoneyScreen } from '../screens/money/money-screen.tsx';
import { NextJobsScreen } from '../screens/next-jobs/next-jobs-screen.tsx';
import { SafetyScreen } from '../screens/safety/safety-screen.tsx';
import { SetupScreen } from '../screens/setup/setup-screen.tsx';
import { SheetsScreen } from '../screens/sheets/sheets-screen.tsx';
import { TakeInScreen } from '../screens/take-in/take-in-screen.tsx';
import { VehicleScreen } from '../screens/vehicle/vehicle-screen.tsx';
import { WaitingScreen } from '../screens/waiting/waiting-screen.tsx';
import type { Route } from '../state/route-store.ts';

export function Screen({ route }: { readonly route: Route }) {
  switch (route.screen) {
    case 'lot':
      return <LotScreen />;
    case 'vehicle':
      return <VehicleScreen key={route.id} id={route.id} {...(route.place ? { place: route.place } : {})} />;
    case 'next-jobs':
      return <NextJobsScreen />;
    case 'waiting':
      return <WaitingScreen />;
    case 'take-in':
      return <TakeInScreen key={route.vin ?? ''} {...(route.vin ? { vin: route.vin } : {})} />;
    case 'import-list':
      return <ImportListScreen />;
    case 'sheets':
      return <SheetsScreen led={route} />;
    case 'money':
      return <MoneyScreen />;
    case 'safety':
      return <SafetyScreen />;
    case 'setup':
      return <SetupScreen />;
  }
}
