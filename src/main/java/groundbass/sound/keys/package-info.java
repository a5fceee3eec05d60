/** A keyboard with struck tines for the chords. Knows nothing of other instruments or of the mix. */
package groundbass.sound.keys;
