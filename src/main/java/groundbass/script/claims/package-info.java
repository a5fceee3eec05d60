/**
 * What a sentence may say of a line or of the neck, as values. Knows neither how it was read nor whether it is so.
 */
package groundbass.script.claims;
