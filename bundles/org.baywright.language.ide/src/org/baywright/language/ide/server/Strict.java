package org.baywright.language.ide.server;

import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutionException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.lang.reflect.InvocationTargetException;
import org.eclipse.lsp4j.jsonrpc.MessageIssueException;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.json.JsonRpcMethod;
import org.eclipse.lsp4j.jsonrpc.json.MessageJsonHandler;
import org.eclipse.lsp4j.jsonrpc.messages.Message;
import org.eclipse.lsp4j.jsonrpc.messages.MessageIssue;
import org.eclipse.lsp4j.jsonrpc.messages.RequestMessage;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import com.google.gson.JsonElement;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;

/** Reads messages of clients that may be odd: no message may end the server, and each error says what is wrong. */
final class Strict extends MessageJsonHandler {

	/** No message of the protocol is nested this deep; one that is would only exhaust the reader. */
	private static final int MOST_DEEP = 200;

	private static final Pattern ID = Pattern.compile("\\s*:\\s*(?:\"([^\"\\\\]*)\"|(-?[0-9]+)(?![0-9.eE]))");

	Strict(Map<String, JsonRpcMethod> methods) {
		super(methods);
	}

	@Override
	public Message parseMessage(Reader input) {
		String text = text(input);
		RequestMessage about = new RequestMessage();
		if (depth(text) > MOST_DEEP) {
			if (id(text) instanceof Integer number) {
				about.setId(number);
			} else if (id(text) instanceof String word) {
				about.setId(word);
			}
			throw refused(about, ResponseErrorCode.InvalidRequest,
					"The message is nested more than " + MOST_DEEP + " deep, which is not read.");
		}
		String method = method(text, about);
		Message message;
		try {
			message = super.parseMessage(new StringReader(text));
		} catch (MessageIssueException | JsonParseException e) {
			throw refused(about, ResponseErrorCode.InvalidParams, method + " holds something of a wrong form.");
		}
		if (message == null) {
			throw refused(about, ResponseErrorCode.InvalidRequest, "The message says nothing.");
		}
		// the library passes over a request of this kind too, which the protocol allows for notifications only
		// (Language Server Protocol 3.17, "$ Notifications and Requests")
		if (message instanceof RequestMessage && method.startsWith("$/")) {
			throw refused(about, ResponseErrorCode.MethodNotFound, "Baywright does not offer this.");
		}
		return message;
	}

	/** Looks at what frames a message, takes over its id, and returns its method. */
	private static String method(String text, RequestMessage about) {
		JsonElement element;
		try {
			element = JsonParser.parseString(text);
		} catch (JsonParseException e) {
			throw refused(about, ResponseErrorCode.ParseError, "The message is no JSON text.");
		}
		if (!element.isJsonObject()) {
			throw refused(about, ResponseErrorCode.InvalidRequest, "A message is one JSON object.");
		}
		JsonElement id = element.getAsJsonObject().get("id");
		if (id != null && !id.isJsonNull()) {
			if (id instanceof JsonPrimitive word && word.isString()) {
				about.setId(word.getAsString());
			} else if (id instanceof JsonPrimitive number && number.isNumber() && whole(number.getAsString()).isPresent()) {
				about.setId(whole(number.getAsString()).get());
			} else {
				throw refused(about, ResponseErrorCode.InvalidRequest,
						"The id of a request is a text, or a whole number from -2147483648 to 2147483647.");
			}
		}
		JsonElement method = element.getAsJsonObject().get("method");
		if (method == null && (element.getAsJsonObject().has("result") || element.getAsJsonObject().has("error"))) {
			return "The answer";
		}
		if (!(method instanceof JsonPrimitive name && name.isString())) {
			throw refused(about, ResponseErrorCode.InvalidRequest, "The message names no method.");
		}
		return name.getAsString();
	}

	/** Returns an integer as the protocol (3.17, "integer") bounds it. */
	private static Optional<Integer> whole(String number) {
		try {
			return Optional.of(Integer.valueOf(number));
		} catch (NumberFormatException e) {
			return Optional.empty();
		}
	}

	private static MessageIssueException refused(RequestMessage about, ResponseErrorCode code, String message) {
		return new MessageIssueException(about, List.of(new MessageIssue(message, code.getValue())));
	}

	private static String text(Reader input) {
		try {
			StringWriter text = new StringWriter();
			input.transferTo(text);
			return text.toString();
		} catch (IOException e) {
			throw new UncheckedIOException(e);
		}
	}

	/** Returns the number or text by which the outermost object is to be answered; null if it has none. */
	private static Object id(String text) {
		int depth = 0;
		for (int i = 0; i < text.length(); i++) {
			char c = text.charAt(i);
			if (c == '"') {
				int end = endOfText(text, i);
				if (depth == 1 && text.startsWith("\"id\"", i)) {
					Matcher value = ID.matcher(text).region(end + 1, text.length());
					return !value.lookingAt() ? null : value.group(1) != null ? value.group(1) : whole(value.group(2)).orElse(null);
				}
				i = end;
			} else if (c == '{' || c == '[') {
				depth++;
			} else if (c == '}' || c == ']') {
				depth--;
			}
		}
		return null;
	}

	private static int endOfText(String text, int from) {
		for (int i = from + 1; i < text.length(); i++) {
			char c = text.charAt(i);
			if (c == '\\') {
				i++;
			} else if (c == '"') {
				return i;
			}
		}
		return text.length();
	}

	private static int depth(String text) {
		int depth = 0;
		int deepest = 0;
		for (int i = 0; i < text.length(); i++) {
			char c = text.charAt(i);
			if (c == '"') {
				i = endOfText(text, i);
			} else if (c == '{' || c == '[') {
				deepest = Math.max(deepest, ++depth);
			} else if (c == '}' || c == ']') {
				depth--;
			}
		}
		return deepest;
	}

	/** What went wrong while a request was answered, as the client hears it. */
	static ResponseError said(Throwable failure) {
		Throwable cause = failure;
		while ((cause instanceof CompletionException || cause instanceof ExecutionException
				|| cause instanceof InvocationTargetException) && cause.getCause() != null) {
			cause = cause.getCause();
		}
		if (cause instanceof ResponseErrorException known) {
			return known.getResponseError();
		}
		if (cause instanceof UnsupportedOperationException) {
			return new ResponseError(ResponseErrorCode.MethodNotFound, "Baywright does not offer this.", null);
		}
		if (cause instanceof NullPointerException || cause instanceof IllegalArgumentException
				|| cause instanceof ClassCastException) {
			return new ResponseError(ResponseErrorCode.InvalidParams,
					"The request lacks something, or holds something of a wrong form.", null);
		}
		return new ResponseError(ResponseErrorCode.InternalError, "Baywright itself failed: " + cause, null);
	}
}
