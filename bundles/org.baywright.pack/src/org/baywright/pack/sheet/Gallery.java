package org.baywright.pack.sheet;

import java.util.Base64;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

import org.baywright.model.Picture;
import org.baywright.model.PictureFile;

/** Shows pictures in the sheet: each once, with its words; where it belongs to something else too, a link leads to it. */
final class Gallery {

	private final Map<String, byte[]> pictures;
	private final Html html;
	private final Set<String> shown = new HashSet<>();

	/** @param pictures the content of each picture by its file */
	Gallery(Map<String, byte[]> pictures, Html html) {
		this.pictures = pictures;
		this.html = html;
	}

	/** Writes the pictures of a part, a test or a repair. */
	void write(List<Picture> all) {
		for (Picture picture : all) {
			String id = "picture-" + picture.file();
			byte[] content = pictures.get(picture.file());
			if (content == null) {
				html.element("p", "Picture: " + picture.words());
			} else if (!shown.add(picture.file())) {
				html.open("p").text("Picture: ").link(id, picture.words()).close();
			} else {
				html.open("figure", "id", id).empty("img", "src",
						"data:" + PictureFile.type(picture.file()).orElseThrow() + ";base64," + Base64.getEncoder().encodeToString(content), "alt", picture.words(),
						"style", "max-width:100%").element("figcaption", picture.words()).close();
			}
		}
	}
}
