/** What sounds sample by sample, and the small parts from which such units are built. Knows no instrument. */
package groundbass.sound.unit;
