/**
 * What may be a slip of the writing hand: notes outside chord or key, and what the rest of the line says otherwise. Each
 * rule stands in a file of its own; all suspicions of one place are weighed together ({@link
 * groundbass.checks.slip.KinSuspicions}).
 */
package groundbass.checks.slip;
