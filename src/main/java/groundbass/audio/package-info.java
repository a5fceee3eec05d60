/**
 * Sound files in and out: what a file is by its bytes alone, decoders and encoders of WAV, MP3 and FLAC, an encoder
 * of Opus, and their tags. Knows neither where files lie nor what is heard in them.
 */
package groundbass.audio;
