package org.baywright.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Against files of 31 by 17 points that a general-purpose image library wrote (ImageMagick 6.9): PNG, JPEG, progressive JPEG. */
class PictureContentTest {

	private static final byte[] PNG = bytes("iVBORw0KGgoAAAANSUhEUgAAAB8AAAARAQMAAAAfauUKAAAAA1BMVEX/AAAZ4gk3AAAADElEQVQI12NgoAEAAABVAAEdLWPrAAAAAElFTkSuQmCC");
	private static final byte[] JPEG = bytes("/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDABQODxIPDRQSEBIXFRQYHjIhHhwcHj0sLiQySUBMS0dARkVQWnNiUFVtVkVGZIhlbXd7gYKBTmCNl4x9lnN+gXz/2wBDARUXFx4aHjshITt8U0ZTfHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHz/wAARCAARAB8DASIAAhEBAxEB/8QAFQABAQAAAAAAAAAAAAAAAAAAAAX/xAAUEAEAAAAAAAAAAAAAAAAAAAAA/8QAFgEBAQEAAAAAAAAAAAAAAAAAAAUG/8QAFBEBAAAAAAAAAAAAAAAAAAAAAP/aAAwDAQACEQMRAD8AlAJ7YAAAAAAP/9k=");
	private static final byte[] PROGRESSIVE = bytes("/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDABQODxIPDRQSEBIXFRQYHjIhHhwcHj0sLiQySUBMS0dARkVQWnNiUFVtVkVGZIhlbXd7gYKBTmCNl4x9lnN+gXz/2wBDARUXFx4aHjshITt8U0ZTfHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHz/wgARCAARAB8DASIAAhEBAxEB/8QAFQABAQAAAAAAAAAAAAAAAAAAAAT/xAAWAQEBAQAAAAAAAAAAAAAAAAAABAX/2gAMAwEAAhADEAAAAZBPsAAAf//EABQQAQAAAAAAAAAAAAAAAAAAADD/2gAIAQEAAQUCT//EABQRAQAAAAAAAAAAAAAAAAAAACD/2gAIAQMBAT8BH//EABQRAQAAAAAAAAAAAAAAAAAAACD/2gAIAQIBAT8BH//EABQQAQAAAAAAAAAAAAAAAAAAADD/2gAIAQEABj8CT//EABQQAQAAAAAAAAAAAAAAAAAAADD/2gAIAQEAAT8hT//aAAwDAQACAAMAAAAQ8888/8QAFBEBAAAAAAAAAAAAAAAAAAAAIP/aAAgBAwEBPxAf/8QAFBEBAAAAAAAAAAAAAAAAAAAAIP/aAAgBAgEBPxAf/8QAFBABAAAAAAAAAAAAAAAAAAAAMP/aAAgBAQABPxBP/9k=");

	private static byte[] bytes(String text) {
		return Base64.getDecoder().decode(text);
	}

	@Test
	void readsTypeAndSize() {
		assertEquals(Optional.of(new PictureContent("image/png", 31 * 17, true)), PictureContent.of(PNG));
		assertEquals(Optional.of(new PictureContent("image/jpeg", 31 * 17, true)), PictureContent.of(JPEG));
		assertEquals(Optional.of(new PictureContent("image/jpeg", 31 * 17, true)), PictureContent.of(PROGRESSIVE));
		assertEquals(Optional.empty(), PictureContent.of(new byte[] { 1, 2, 3, 4, 5, 6, 7, 8, 9 }));
	}

	/** Whatever is cut off: it is either no picture any more or not whole. */
	@Test
	void whatIsCutShortIsNotWhole() {
		for (byte[] picture : List.of(PNG, JPEG, PROGRESSIVE)) {
			for (int length = 0; length < picture.length; length++) {
				assertFalse(PictureContent.of(Arrays.copyOf(picture, length)).map(PictureContent::whole).orElse(false), "cut at " + length);
			}
		}
		assertTrue(PictureContent.of(Arrays.copyOf(JPEG, JPEG.length + 100)).orElseThrow().whole(), "cameras add bytes behind the end");
	}

	@Test
	void morePointsThanAnybodyNeedsAreRefused() {
		byte[] wide = PNG.clone();
		Arrays.fill(wide, 16, 24, (byte) 0x7F);
		assertEquals("`a.png` has more than 40 million points.", PictureFile.ofContent("a.png", wide, wide.length).orElseThrow().message());
		Arrays.fill(wide, 16, 24, (byte) 0xFF);
		assertEquals(ProblemKind.PICTURE_TOO_LARGE, PictureFile.ofContent("a.png", wide, wide.length).orElseThrow().kind());
		assertEquals(Optional.empty(), PictureFile.ofContent("a.png", PNG, PNG.length));
		assertEquals("`a.png` ends in the middle.", PictureFile.ofContent("a.png", Arrays.copyOf(PNG, 60), 60).orElseThrow().message());
	}
}
