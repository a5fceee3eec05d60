/** Programs that print figures, each beside an anchor measured in the same run. Nothing is asserted: machines differ. */
package groundbass.bench;
