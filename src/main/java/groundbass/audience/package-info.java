/**
 * Students: how they sign in, what they agreed to, what they took home, and the numbers that come of it. Knows
 * nothing of pages, of music, or of how a release is made: it names released files by value.
 */
package groundbass.audience;
