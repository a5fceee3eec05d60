/**
 * What hands and strings allow: what cannot be played, what few play, and what another place on the neck would ease. Each
 * rule stands in a file of its own. Limits of hands and speed are common practice, not medicine.
 */
package groundbass.checks.hand;
