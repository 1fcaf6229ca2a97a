/** Rules of thumb beside a figure: what nobody published is said once under the table, not on every line. */

const PRACTICE = ' (Common practice, no source.)';

/** The rule without the words every one of them ends in; a rule with a source of its own keeps it. */
export function ruleText(rule: string): string {
  return rule.endsWith(PRACTICE) ? rule.slice(0, -PRACTICE.length) : rule;
}

export const RULES_NOTE = 'Rules of thumb: common practice, no source unless said.';
