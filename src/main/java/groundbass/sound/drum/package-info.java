/**
 * Synthesized drums and the click, each stroke made once and played when it is due. Knows nothing of other
 * instruments or of the mix.
 */
package groundbass.sound.drum;
