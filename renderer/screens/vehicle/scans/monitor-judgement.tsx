// What the monitors say and what the shop's inspection would make of them, with the source of the rule and why they may be incomplete.
import { chosenScheme } from '../../../../app/domain/diagnosis/inspection-schemes.ts';
import { judgeScan } from '../../../../app/domain/diagnosis/judge-scan.ts';
import { type ReadinessReset, resetWords } from '../../../../app/domain/diagnosis/readiness-resets.ts';
import type { Scan } from '../../../../app/domain/diagnosis/scan.ts';
import { sayDay } from '../../../text/say-day.ts';
import { monitorText } from '../../../text/scans.ts';
import { useVehicle } from '../page/vehicle-context.ts';

type JudgementProps = {
  readonly scan: Pick<Scan, 'monitorBytes' | 'modules' | 'warmUpsSinceClear' | 'distanceSinceClear'>;
  /** What in the record set them back, where the scan is kept. */
  readonly resets?: readonly ReadinessReset[];
};

export function MonitorJudgementLines({ scan, resets = [] }: JudgementProps) {
  const { vehicle, desk, today } = useVehicle();
  const scheme = desk.shop === null ? null : chosenScheme(desk.shop.inspection);
  const judged = judgeScan(scan, vehicle.identity, scheme);
  if (judged === null) return null;
  const { reading, judgement } = judged;
  const state = [
    ...(reading.isLampCommanded ? [monitorText.lampOn] : []),
    reading.isReady ? monitorText.ready : monitorText.incomplete(reading.incomplete),
  ];
  const rule = judgement?.rule ?? null;
  return (
    <div className="monitor-lines">
      <p>
        {monitorText.title}: {state.join('; ')}.{' '}
        {judgement !== null && scheme !== null && (
          <b className={`is-${judgement.verdict}`}>
            {monitorText.judged(scheme.name, monitorText.verdicts[judgement.verdict])}
          </b>
        )}
        {scheme === null && <span className="quiet">{monitorText.noScheme}</span>}
        {scheme !== null && judgement === null && <span className="quiet">{monitorText.noModelYear}</span>}
      </p>
      {[...reading.warnings, ...(judgement?.reasons ?? [])].map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {rule !== null && <p className="code-detail">{monitorText.source(rule.source, rule.sourceDated)}</p>}
      {!reading.isReady && (
        <details className="monitor-why">
          <summary>{monitorText.why}</summary>
          <p>{resetWords}</p>
          {resets.length > 0 && (
            <ul>
              {resets.map(({ on, what }) => (
                <li key={`${on} ${what}`}>{monitorText.inRecord(what, sayDay(on, today))}</li>
              ))}
            </ul>
          )}
        </details>
      )}
    </div>
  );
}
