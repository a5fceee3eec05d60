/**
 * Everything that one lesson says, and how its series has its sheets, as typed values. Knows neither who keeps them
 * nor what is made of them.
 */
package groundbass.document;
