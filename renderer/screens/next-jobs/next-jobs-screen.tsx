// Next jobs: open programming steps and repairs of all vehicles that can be done now, grouped by vehicle; under them those that cannot.
import './next-jobs.css';
import type { NextJobsView } from '../../../app/contract/next-jobs-view.ts';
import { showCents } from '../../../app/domain/shared/cents.ts';
import { showMinutes } from '../../../app/domain/sheets/sheet-words.ts';
import { cautions } from '../../../app/domain/work/cautions.ts';
import { useDesk } from '../../state/desk-store.ts';

import { goTo } from '../../state/route-store.ts';
import { useReading } from '../../state/use-reading.ts';
import { nextJobsText } from '../../text/next-jobs.ts';
import { sayWholeDaysIn } from '../../text/say-day.ts';
import { tableText } from '../../text/tables.ts';
import { Button } from '../../ui/button.tsx';
import { CsvButton } from '../../ui/csv-button.tsx';
import { EmptyFleet, useIsFleetEmpty } from '../../ui/empty-fleet.tsx';
import { EmptyState } from '../../ui/empty-state.tsx';
import { LiveRegion } from '../../ui/live-region.tsx';
import { ScreenPurpose } from '../../ui/screen-purpose.tsx';
import { SectionHead } from '../../ui/section-head.tsx';

type Vehicle = NextJobsView['order'][number];
type Task = Vehicle['tasks'][number];

function open(vehicleId: string, { kind, factId }: Pick<Task, 'kind' | 'factId'>): void {
  goTo({ screen: 'vehicle', id: vehicleId, place: { list: kind === 'step' ? 'jobs' : 'faults', id: factId } });
}

function TaskLine({ task, vehicle }: { readonly task: Task; readonly vehicle: Vehicle }) {
  const marks = [
    nextJobsText.about(showMinutes(task.minutes)),
    ...(task.cannotBeUndone ? [nextJobsText.cannotBeUndone] : []),
    ...task.cautions.map((key) => cautions[key].title),
  ];
  return (
    <li className="next-task">
      <div>
        <span className="next-task-what">{task.what}</span>
        <span className="next-task-marks">{marks.join(' · ')}</span>
      </div>
      <Button label={nextJobsText.goFor(task.what, vehicle.stockNumber)} onPress={() => open(vehicle.vehicleId, task)}>
        {nextJobsText.go}
      </Button>
    </li>
  );
}

function VehicleBlock({ vehicle, place, currency }: { vehicle: Vehicle; place: number; currency: string }) {
  const { stockNumber, title, location, keyTag, minutesLeft, lossCentsPerDay, why, share, tasks } = vehicle;
  const after = share === null || share.startsInMinutes === 0 ? null : showMinutes(share.startsInMinutes);
  const about = [
    share === null ? '' : nextJobsText.share(share.name, after),
    location,
    keyTag === '' ? '' : nextJobsText.key(keyTag),
    nextJobsText.left(showMinutes(minutesLeft)),
    lossCentsPerDay === null ? '' : nextJobsText.aDay(showCents(lossCentsPerDay), currency),
  ].filter((part) => part !== '');
  return (
    <li className="next-vehicle" aria-label={nextJobsText.vehicle(place, stockNumber, title)}>
      <h2>
        <span className="next-place">{place}</span> {stockNumber} <span className="next-title">{title}</span>
      </h2>
      <p className="next-about">{about.join(' · ')}</p>
      <p className="next-why">{why}</p>
      <ol>
        {tasks.map((task) => (
          <TaskLine key={`${task.factId} ${task.what}`} task={task} vehicle={vehicle} />
        ))}
      </ol>
    </li>
  );
}

function Waiting({ waiting }: Pick<NextJobsView, 'waiting'>) {
  const lines = waiting.flatMap((vehicle) => vehicle.held.map((held) => ({ vehicle, held })));
  const { columns } = nextJobsText;
  return (
    <section className="next-waiting" aria-labelledby="next-waiting">
      <SectionHead id="next-waiting" title={nextJobsText.waits} count={lines.length} />
      {lines.length === 0 ? (
        <p className="quiet">{nextJobsText.nothingWaits}</p>
      ) : (
        <table>
          <thead>
            <tr>
              <th scope="col">{columns.vehicle}</th>
              <th scope="col">{columns.what}</th>
              <th scope="col">{columns.why}</th>
            </tr>
          </thead>
          <tbody>
            {lines.map(({ vehicle, held }) => (
              <tr key={`${vehicle.vehicleId} ${held.factId} ${held.what}`}>
                <td>
                  <b>{vehicle.stockNumber}</b> {vehicle.title}
                </td>
                <td>
                  <button type="button" className="next-open" onClick={() => open(vehicle.vehicleId, held)}>
                    {held.what}
                  </button>
                </td>
                <td>{sayWholeDaysIn(held.why)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

export function NextJobsScreen() {
  const desk = useDesk();
  const isEmpty = useIsFleetEmpty();
  const isAllowed = desk.person.role !== 'sales';
  const { known, readAgain } = useReading('next-jobs:read', isAllowed);
  const currency = desk.shop?.dealer.currency ?? '';
  if (!isAllowed)
    return (
      <div className="next-jobs">
        <h1>{nextJobsText.title}</h1>
        <EmptyState sentence={nextJobsText.onlyWorkshop} />
      </div>
    );
  if (known.state === 'failed')
    return (
      <div className="next-jobs" role="alert">
        <EmptyState sentence={known.sentence} action={<Button onPress={readAgain}>{nextJobsText.tryAgain}</Button>} />
      </div>
    );
  if (known.state === 'reading') return <p className="next-jobs quiet">{nextJobsText.reading}</p>;
  const { order, waiting } = known.view;
  const count = order.reduce((sum, { tasks }) => sum + tasks.length, 0);
  return (
    <div className="next-jobs">
      <h1>{nextJobsText.title}</h1>
      <ScreenPurpose screen="next-jobs">
        {order.some(({ share }) => share !== null) && ` ${nextJobsText.sharedOut}`}{' '}
        <CsvButton what={tableText.nextJobs} table={() => ({ table: 'next-jobs' })} />
      </ScreenPurpose>
      <LiveRegion text={nextJobsText.found(order.length, count)} />
      {order.length === 0 ? (
        isEmpty ? (
          <EmptyFleet />
        ) : (
          <EmptyState sentence={nextJobsText.nothing} />
        )
      ) : (
        <ol className="next-vehicles">
          {order.map((vehicle, at) => (
            <VehicleBlock key={vehicle.vehicleId} vehicle={vehicle} place={at + 1} currency={currency} />
          ))}
        </ol>
      )}
      <Waiting waiting={waiting} />
    </div>
  );
}
