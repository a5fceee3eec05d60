/**
 * A line as tablature in plain letters of one width, for mails and forums. Knows where a line is played; leaves note
 * shapes to the sheet.
 */
package groundbass.plaintab;
