/**
 * What a rule reads and what it says: the evidence of a line, a finding, and the repairs that would answer it. Knows
 * nothing of text positions, pages or languages: a finding names notes and a message key.
 */
package groundbass.checks.finding;
