/** What stands on the staves themselves: lines, clefs, notes and rests with their signs, numbers, barlines. */
package groundbass.engraving.sign.staff;
