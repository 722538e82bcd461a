// Why a step stands where it stands: the rules that put something right before it, each with its reason and source.
import type { ProgrammingJob } from '../../../../app/domain/programming/programming-job.ts';
import { jobText } from '../../../text/programming.ts';

/** A sentence for each link that ends at the step. What a gate asks says its reason itself; the maker's order is its own reason. */
function reasonsFor({ plan, makerOrder }: ProgrammingJob, stepId: string): readonly string[] {
  return plan.links.flatMap(({ before, after, ruleId }): string[] => {
    if (after !== stepId) return [];
    const title = plan.steps.find(({ id }) => id === before)?.title ?? before;
    const rule = plan.rules.find(({ id }) => id === ruleId);
    if (rule) return [jobText.whyAfter(title, rule.reason.replace(/\.$/, ''), rule.source)];
    if (ruleId.startsWith('maker-') && makerOrder)
      return [jobText.whyAfter(title, jobText.makerKept(makerOrder.document, makerOrder.readOn), makerOrder.document)];
    return [];
  });
}

export function StepWhy({ job, stepId }: { readonly job: ProgrammingJob; readonly stepId: string }) {
  const reasons = reasonsFor(job, stepId);
  if (reasons.length === 0) return null;
  return (
    <details className="step-why">
      <summary>{jobText.why}</summary>
      <ul>
        {reasons.map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
      </ul>
    </details>
  );
}
