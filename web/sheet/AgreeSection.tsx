import { STAGES } from '#core/job/document.ts';
import { ProseField, SelectField, TextField } from '#web/field/sheet-fields.tsx';
import { problemsUnder, useSheet } from './context.tsx';
import { Section } from './Section.tsx';
import { agreeNeeds, agreeSummary } from './summaries.ts';

const stages = STAGES.map((stage) => ({ value: stage, label: stage }));

/** Who it is for, what was promised, and the look in words. */
export function AgreeSection() {
  const { document, speak, problems } = useSheet();
  return (
    <Section
      id="agree"
      name="Agree"
      summary={agreeSummary(document, speak)}
      needs={agreeNeeds(document)}
      problems={problemsUnder(problems, 'agreed').length + problemsUnder(problems, 'customer').length}
    >
      <div className="form">
        <TextField label="Title of the job" path={['title']} className="wide" />
        <TextField label="Customer" path={['customer', 'name']} />
        <TextField label="Phone" path={['customer', 'phone']} type="tel" />
        <TextField label="Email" path={['customer', 'email']} type="email" />
        <SelectField label="Stage" path={['agreed', 'stage']} options={stages} />
        <TextField label="Promised day" path={['agreed', 'handOver']} type="date" />
        <TextField label="Agreed price" path={['agreed', 'price']} maxLength={40} />
      </div>
      <div className="form form-prose">
        <ProseField label="Where the piece goes" path={['customer', 'address']} rows={2} />
        <ProseField label="The look in words" path={['agreed', 'look']} rows={2} />
        <ProseField label="Anything else agreed" path={['agreed', 'notes']} rows={2} />
      </div>
    </Section>
  );
}
