import { ProseField } from '#web/field/sheet-fields.tsx';
import { useSheet } from './context.tsx';
import { Section } from './Section.tsx';
import { firstWords } from './summaries.ts';

/** What happened, in the maker's own words. */
export function RecordSection() {
  const { document } = useSheet();
  return (
    <Section
      id="record"
      name="Record"
      summary={document.record === '' ? 'Nothing written yet.' : firstWords(document.record, 16)}
    >
      <p className="section-note">
        Lots used, what the scale and the thermometer said, when each coat went on, what you would do again.
      </p>
      <ProseField label="What happened" path={['record']} rows={8} />
    </Section>
  );
}
