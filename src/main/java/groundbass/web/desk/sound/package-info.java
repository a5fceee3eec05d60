/** The room of a lesson's sound: the band, the practice tracks, recordings of the educator's own. Makes no sound. */
package groundbass.web.desk.sound;
