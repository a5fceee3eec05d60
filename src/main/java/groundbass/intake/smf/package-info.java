/**
 * Standard MIDI Files read as drafts of lines: what was played is moved to the nearest rhythm that can be written. Knows
 * nothing of how a line is made of a draft.
 */
package groundbass.intake.smf;
