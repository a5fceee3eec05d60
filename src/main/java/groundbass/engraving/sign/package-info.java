/** Every sign of a system, one a file, and the order in which they are drawn. Knows nothing of pages. */
package groundbass.engraving.sign;
