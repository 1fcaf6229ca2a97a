import type { System } from '#core/quantity/units.ts';
import { StripChart } from '#web/charts/StripChart.tsx';
import type { StripJob } from './JobStrip.tsx';

export function Strip({ job, now_ms, system }: { job: StripJob; now_ms: number; system: System }) {
  return <StripChart moments={job.moments} now_ms={now_ms} system={system} />;
}
