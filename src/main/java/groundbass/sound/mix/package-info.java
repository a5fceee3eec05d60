/**
 * The stems of a performance bar by bar, laid over one another and brought to one loudness. Knows nothing of how an
 * instrument makes its sound.
 */
package groundbass.sound.mix;
