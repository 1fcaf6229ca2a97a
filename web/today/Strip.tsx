import type { System } from '#core/quantity/units.ts';
import { StripChart } from '#web/charts/StripChart.tsx';
import { Guard } from '#web/shell/Guard.tsx';
import type { StripJob } from './JobStrip.tsx';

interface Props {
  readonly job: StripJob;
  readonly now_ms: number;
  readonly system: System;
}

/** The next three days of one job, drawn. */
export function Strip({ job, now_ms, system }: Props) {
  return (
    <Guard what="The strip" of={job.forecast}>
      <StripChart moments={job.moments} now_ms={now_ms} system={system} />
    </Guard>
  );
}
